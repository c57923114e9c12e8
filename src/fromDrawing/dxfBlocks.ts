import type { Point } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import { type Affine, after, MIRRORED, UNCHANGED } from './affine';
import { MOST_PIECES } from './drawing';
import { nameOf } from './dxfBlockTable';
import { type Block, type Entity, numberOf, textOf } from './dxfPairs';
import { facesAway } from './dxfPoints';

/** Blocks within blocks; a drawing has two or three. */
const DEEPEST = 16;

/** A drawn thing where it comes to stand. */
export interface Placed {
  readonly entity: Entity;
  readonly affine: Affine;
  readonly layer: string;
}

export type Unfolded = { readonly placed: readonly Placed[] } | { readonly wrong: Wrong };

/** Why blocks cannot be put in place: which one, and what is the matter with it. */
export interface Wrong {
  readonly kind: 'within itself' | 'too deep' | 'too many';
  readonly block: string;
}

interface Unfolding {
  readonly blocks: ReadonlyMap<string, Block>;
  readonly placed: Placed[];
  /** Things and copies met, which bounds the work where copies hold nothing. */
  met: number;
  wrong: Wrong | null;
}

/** Where a level of blocks stands. */
interface Level {
  readonly affine: Affine;
  /** Of the INSERT, for what is drawn on layer 0 of its block; null outside of blocks. */
  readonly layer: string | null;
  /** The blocks it is within, outermost first. */
  readonly within: readonly string[];
}

/** All things of a drawing with the blocks that it inserts put in place; an INSERT whose block is missing stays itself. */
export function unfolded(entities: readonly Entity[], blocks: ReadonlyMap<string, Block>): Unfolded {
  const unfolding: Unfolding = { blocks, placed: [], met: 0, wrong: null };
  unfold(entities, { affine: UNCHANGED, layer: null, within: [] }, unfolding);
  return unfolding.wrong ? { wrong: unfolding.wrong } : { placed: unfolding.placed };
}

function unfold(entities: readonly Entity[], level: Level, unfolding: Unfolding): void {
  for (const entity of entities) {
    unfolding.met++;
    if (unfolding.met > MOST_PIECES) stop('too many', level.within.at(-1) ?? '', unfolding);
    if (unfolding.wrong) return;
    const layer = layerOf(entity, level);
    const block = entity.type === 'INSERT' ? unfolding.blocks.get(nameOf(entity)) : undefined;
    if (block) insert(entity, block, { ...level, layer }, unfolding);
    else unfolding.placed.push({ entity, affine: level.affine, layer });
  }
}

/** Layer 0 of a block is that of whatever inserts it (DXF reference, BLOCKS section). */
function layerOf(entity: Entity, { layer }: Level): string {
  const own = textOf(entity, 8) ?? '';
  return layer !== null && (own === '0' || own === '') ? layer : own;
}

const stop = (kind: Wrong['kind'], block: string, unfolding: Unfolding): void => {
  unfolding.wrong ??= { kind, block };
};

function insert(entity: Entity, block: Block, level: Level, unfolding: Unfolding): void {
  const name = nameOf(entity);
  const [columns, rows] = [countOf(entity, 70), countOf(entity, 71)];
  if (level.within.includes(name)) stop('within itself', name, unfolding);
  else if (level.within.length >= DEEPEST) stop('too deep', name, unfolding);
  else if (columns * rows > MOST_PIECES) stop('too many', name, unfolding);
  const within = [...level.within, name];
  for (let copy = 0; copy < columns * rows && !unfolding.wrong; copy++) {
    const step = {
      x: (copy % columns) * numberOr(entity, 44, 0),
      y: Math.floor(copy / columns) * numberOr(entity, 45, 0),
    };
    const affine = after(level.affine, placeOf(entity, block, step));
    // Each copy is met once for itself, or a million empty ones would cost nothing and take for ever.
    unfolding.met++;
    if (unfolding.met > MOST_PIECES) stop('too many', name, unfolding);
    unfold(block.entities, { ...level, affine, within }, unfolding);
  }
}

const numberOr = (entity: Entity, code: number, otherwise: number): number => {
  const number = numberOf(entity, code);
  return Number.isFinite(number) ? number : otherwise;
};

const countOf = (entity: Entity, code: number): number => Math.max(1, Math.floor(numberOr(entity, code, 1)));

/**
 * From the block's frame to that of the INSERT: base point to origin, scaled, a step on in its array, turned, set down
 * (DXF reference, INSERT: 10 and 20 place, 41 and 42 scale, 50 rotation, 44 and 45 spacing, which is not scaled).
 */
function placeOf(entity: Entity, { base }: Block, step: Point): Affine {
  const angle = fromDegrees(numberOr(entity, 50, 0));
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [scaleX, scaleY] = [numberOr(entity, 41, 1), numberOr(entity, 42, 1)];
  const scaled: Affine = {
    origin: { x: step.x - base.x * scaleX, y: step.y - base.y * scaleY },
    alongX: { x: scaleX, y: 0 },
    alongY: { x: 0, y: scaleY },
  };
  const turned: Affine = {
    origin: { x: numberOf(entity, 10), y: numberOf(entity, 20) },
    alongX: { x: cos, y: sin },
    alongY: { x: -sin, y: cos },
  };
  const placed = after(turned, scaled);
  return facesAway(entity) ? after(MIRRORED, placed) : placed;
}
