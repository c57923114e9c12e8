import type { MeshOutline } from '$src/core/pour/record';
import type { Point } from '$src/core/section/section';
import { addCell } from './cellNodes';
import { type EdgeNode, floorOf, THINNEST, topOf } from './edgeNode';
import { addFilmCell, type FrameMetal, runsAsFilm } from './film';
import { roundNoses } from './roundNoses';
import { straightened } from './straightened';

/** Metal as drawn, in the die frame [m]: filled bodies and the free surface. Where metal touches steel there is no skin. */
export interface MetalShape {
  readonly bodies: readonly (readonly Point[])[];
  readonly skins: readonly (readonly Point[])[];
}

/** Cosines smaller than this are 0: the body stands upright. */
const UPRIGHT = 1e-12;

/**
 * Metal of one frame of a record.
 *
 * Levels are joined at the faces of wet neighbours, so that the surface is one line; inside a cell the surface is the
 * straight line between its two face levels, cut by floor and roof. No division by cos(inclination): it holds at −90°. Beyond
 * the upright the roof lies under the metal, so the outline is drawn upside down and turned back: elevations stay.
 * Where metal runs down a steep floor it lies along it as deep as the record has it, see `runsAsFilm`.
 */
export function metalOfFrame(outline: MeshOutline, inclination: number, metal: FrameMetal): MetalShape {
  const { levelOf } = metal;
  if (Math.cos(inclination) < -UPRIGHT)
    return turnedOver(metalOfFrame(outlineTurned(outline), Math.PI - inclination, metal));
  const bodies: Point[][] = [];
  const skins: Point[][] = [];
  const cells = outline.x.length - 1;
  for (let from = 0; from < cells; from++) {
    if (Number.isNaN(levelOf(from))) continue;
    let to = from;
    while (to + 1 < cells && !Number.isNaN(levelOf(to + 1))) to++;
    addRun(bodies, skins, outline, inclination, metal, from, to);
    from = to;
  }
  return { bodies, skins };
}

const negated = (heights: ArrayLike<number>): Float64Array => Float64Array.from(heights, (y) => -y);

function outlineTurned(outline: MeshOutline): MeshOutline {
  return {
    ...outline,
    floorLeft: negated(outline.roofLeft),
    floorRight: negated(outline.roofRight),
    roofLeft: negated(outline.floorLeft),
    roofRight: negated(outline.floorRight),
  };
}

function turnedOver({ bodies, skins }: MetalShape): MetalShape {
  const over = (lines: readonly (readonly Point[])[]) =>
    lines.map((line) => line.map(({ x, y }) => ({ x, y: -y })));
  return { bodies: over(bodies), skins: over(skins) };
}

function addRun(
  bodies: Point[][],
  skins: Point[][],
  outline: MeshOutline,
  inclination: number,
  metal: FrameMetal,
  from: number,
  to: number,
): void {
  const nodes: EdgeNode[] = [];
  const isFilm = (cell: number) => runsAsFilm(outline, inclination, metal, cell);
  for (let cell = from; cell <= to; cell++) {
    if (isFilm(cell)) {
      addFilmCell(nodes, outline, metal, cell, isFilm);
      continue;
    }
    const level = (neighbour: number) =>
      isFilm(neighbour)
        ? metal.levelOf(cell)
        : faceLevel(outline, inclination, metal.levelOf, cell, neighbour);
    addCell(nodes, outline, inclination, cell, level(cell - 1), level(cell + 1));
  }
  for (const stretch of wetStretches(nodes)) {
    const rounded = roundNoses(stretch, outline, from, to);
    bodies.push([...straightened(rounded.map(topOf)), ...straightened(rounded.map(floorOf)).reverse()]);
    skins.push(...freeStretches(rounded));
  }
}

/** Level of `cell` at its face towards `neighbour`: the mean of two free surfaces, else its own. */
function faceLevel(
  outline: MeshOutline,
  inclination: number,
  levelOf: (cell: number) => number,
  cell: number,
  neighbour: number,
): number {
  const own = levelOf(cell);
  if (neighbour < 0 || neighbour >= outline.x.length - 1) return own;
  const other = levelOf(neighbour);
  if (Number.isNaN(other)) return own;
  const onRight = neighbour > cell;
  const x = outline.x[onRight ? neighbour : cell]!;
  const roof = (onRight ? outline.roofLeft : outline.roofRight)[neighbour]!;
  const floor = (onRight ? outline.floorLeft : outline.floorRight)[neighbour]!;
  const ownFloor = (onRight ? outline.floorRight : outline.floorLeft)[cell]!;
  const along = x * Math.sin(inclination);
  const upright = Math.cos(inclination);
  const roofLevel = along + roof * upright;
  const stepped = other <= along + ownFloor * upright || own <= along + floor * upright;
  if (stepped) return own;
  if (other >= roofLevel && !outline.open[neighbour]) return own >= roofLevel ? own : (own + roofLevel) / 2;
  return (own + other) / 2;
}

/** Cuts a run where the metal thins out to nothing. */
function wetStretches(nodes: readonly EdgeNode[]): EdgeNode[][] {
  const stretches: EdgeNode[][] = [];
  let current: EdgeNode[] = [];
  const close = () => {
    if (current.some((n) => n.top - n.floor > THINNEST)) stretches.push(current);
    current = [];
  };
  nodes.forEach((node, i) => {
    const dry = node.top - node.floor <= THINNEST;
    const dryBefore = i > 0 && nodes[i - 1]!.top - nodes[i - 1]!.floor <= THINNEST;
    if (dry && dryBefore) {
      close();
      current = [node];
      return;
    }
    current.push(node);
  });
  close();
  return stretches;
}

/** The pieces of an edge that are free surface. */
function freeStretches(nodes: readonly EdgeNode[]): Point[][] {
  const skins: Point[][] = [];
  let current: Point[] = [];
  nodes.forEach((node, i) => {
    if (i > 0 && node.free) {
      if (current.length === 0) current.push(topOf(nodes[i - 1]!));
      current.push(topOf(node));
      return;
    }
    if (current.length > 1) skins.push(straightened(current));
    current = [];
  });
  if (current.length > 1) skins.push(straightened(current));
  return skins;
}
