import type { Issue } from '$src/core/issue';
import type { Point } from '$src/core/section/section';
import { fromInches, fromMillimetres, toMillimetres } from '$src/core/units';
import { applied, stretchOf } from './affine';
import {
  type DrawnLine,
  drawingOf,
  LARGEST_DRAWING,
  LEAVE_OUT,
  MOST_PIECES,
  MOST_POINTS_IN_ALL,
  passedOver,
  type ReadDrawing,
  refuse,
  tooLarge,
  tooMany,
  tooManyPoints,
} from './drawing';
import { type Placed, unfolded, type Wrong } from './dxfBlocks';
import { blockTable, nameOf } from './dxfBlockTable';
import { type Entity, readPairs } from './dxfPairs';
import { isClosed, isLine, pointsOf } from './dxfPoints';
import { withVertices } from './dxfPolyline';
import { isFitOnly } from './dxfSpline';
import { joined } from './joined';
import { COARSE_CUT, FINE_CUT } from './tolerance';

/** Metres of one drawing unit by the header's $INSUNITS (DXF reference, HEADER section). */
const UNITS: Readonly<Record<number, number>> = {
  1: fromInches(1),
  2: fromInches(12),
  4: fromMillimetres(1),
  5: fromMillimetres(10),
  6: 1,
};

/**
 * Reads lines, polylines, arcs, circles, ellipses and splines of a DXF drawing in text form, in blocks too; lines that
 * meet end to end on a layer become one.
 */
export function readDxf(text: string): ReadDrawing {
  if (text.length > LARGEST_DRAWING) return tooLarge(text.length);
  const content = readPairs(text);
  if ('wrong' in content) return unreadable(content.wrong);
  const unit = content.unitCode === null ? null : (UNITS[content.unitCode] ?? null);
  const entities = withVertices(content.entities);
  if (entities.length === 0) return unreadable('it has no entities.');
  if (entities.length > MOST_PIECES) return tooMany(entities.length);
  const whole = unfolded(entities, blockTable(content.blockEntities));
  if ('wrong' in whole) return wrongBlock(whole.wrong);
  // A drawing that says no scale is taken in millimetres until somebody tells its true length.
  const scale = unit ?? fromMillimetres(1);
  const finely = piecesOf(whole.placed, FINE_CUT / scale);
  const pieces = finely ?? piecesOf(whole.placed, COARSE_CUT / scale);
  if (!pieces) return tooManyPoints();
  const named = joined(pieces.lines).map((line, index) => ({ ...line, name: `line ${index + 1}` }));
  const issues = [
    ...passedOver(pieces.passed),
    ...fittedHere(pieces.fitted),
    ...(finely ? [] : [cutCoarsely()]),
  ];
  return drawingOf(named, unit, issues);
}

const unreadable = (reason: string): ReadDrawing =>
  refuse(
    `The file is not readable as DXF: ${reason}`,
    'Save the drawing as DXF in text form (not binary), and open it again.',
  );

const REASONS: Readonly<Record<Wrong['kind'], (block: string) => string>> = {
  'within itself': (block) => `Block “${block}” of the drawing is placed within itself.`,
  'too deep': (block) => `Block “${block}” of the drawing is nested deeper than in any drawing.`,
  'too many': (block) =>
    `With the copies of block “${block}” the drawing has more than ${MOST_PIECES} pieces, the most that one of a section has.`,
};

const wrongBlock = ({ kind, block }: Wrong): ReadDrawing =>
  refuse(
    REASONS[kind](block.slice(0, 60)),
    'Break up the blocks that are needed, leave out the rest, and save the drawing again.',
  );

interface Pieces {
  readonly lines: readonly DrawnLine[];
  readonly passed: ReadonlyMap<string, number>;
  /** How many are curves of which the file gives no more than points. */
  readonly fitted: number;
}

/**
 * What is a line and what is not, curves cut into chords that stray by `stray` at most [units of the drawing]; null when
 * there are more points in all than in any drawing.
 */
function piecesOf(placed: readonly Placed[], stray: number): Pieces | null {
  // A block is flattened once, however often it is inserted, unless it comes larger.
  const known = new Map<Entity, { readonly stretch: number; readonly points: readonly Point[] }>();
  const lines: DrawnLine[] = [];
  const passed = new Map<string, number>();
  let [count, fitted] = [0, 0];
  for (const { entity, affine, layer } of placed) {
    const stretch = stretchOf(affine);
    const before = known.get(entity);
    const own = before && before.stretch >= stretch ? before.points : pointsOf(entity, stray / stretch);
    if (own !== before?.points) known.set(entity, { stretch, points: own });
    count += own.length;
    if (count > MOST_POINTS_IN_ALL) return null;
    const points = own.map((point) => applied(affine, point));
    if (points.length > 1 && points.every(isSomewhere)) {
      lines.push({ layer, name: '', points, isClosed: isClosed(entity) });
      if (isFitOnly(entity)) fitted++;
    } else passed.set(kindOf(entity), (passed.get(kindOf(entity)) ?? 0) + 1);
  }
  return { lines, passed, fitted };
}

const isSomewhere = ({ x, y }: Point): boolean => Number.isFinite(x) && Number.isFinite(y);

/** What a thing that was passed over is called. */
function kindOf(entity: Entity): string {
  const kind = entity.type.toLowerCase().slice(0, 30);
  if (entity.type === 'INSERT') return `insert of block “${nameOf(entity).slice(0, 30)}”, which is missing`;
  return isLine(entity) ? `${kind} that cannot be read` : kind;
}

const cutCoarsely = (): Issue => ({
  path: 'lines',
  message: `The drawing has very many curves: they were cut less finely, and may stray ${toMillimetres(COARSE_CUT)} mm more.`,
  remedy: LEAVE_OUT,
});

/** Between points alone a curve is a reading, not what was drawn. */
function fittedHere(count: number): Issue[] {
  if (count === 0) return [];
  const message = `The file gives only points of these, and they were taken as the smoothest curves through them: spline (${count}).`;
  const remedy =
    'Compare them with what was drawn; where they stray, save them with control points or as polylines.';
  return [{ path: 'lines', message, remedy }];
}
