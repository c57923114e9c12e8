import type { Point } from '$src/core/section/section';
import { fromDegrees, fromInches, fromMillimetres } from '$src/core/units';
import { arcPoints, bulgePoints } from './curves';
import {
  type DrawnLine,
  drawingOf,
  LARGEST_DRAWING,
  MOST_PIECES,
  MOST_POINTS,
  passedOver,
  type ReadDrawing,
  refuse,
  tooLarge,
  tooMany,
} from './drawing';
import { type Entity, numberOf, readPairs, textOf } from './dxfPairs';
import { joined } from './joined';

/** Metres of one drawing unit by the header's $INSUNITS (DXF reference, HEADER section). */
const UNITS: Readonly<Record<number, number>> = {
  1: fromInches(1),
  2: fromInches(12),
  4: fromMillimetres(1),
  5: fromMillimetres(10),
  6: 1,
};

/** Reads lines, polylines and arcs of a DXF drawing in text form; lines that meet end to end on a layer become one. */
export function readDxf(text: string): ReadDrawing {
  if (text.length > LARGEST_DRAWING) return tooLarge(text.length);
  const content = readPairs(text);
  if ('wrong' in content) return unreadable(content.wrong);
  const { unitCode } = content;
  const entities = withVertices(content.entities);
  if (entities.length === 0) return unreadable('it has no entities.');
  if (entities.length > MOST_PIECES) return tooMany(entities.length);
  const passed = new Map<string, number>();
  const pieces = entities.flatMap((entity): DrawnLine[] => {
    const piece = pieceOf(entity);
    if (piece) return [piece];
    const what = entity.type.toLowerCase().slice(0, 30);
    passed.set(what, (passed.get(what) ?? 0) + 1);
    return [];
  });
  const named = joined(pieces).map((line, index) => ({ ...line, name: `line ${index + 1}` }));
  return drawingOf(named, unitCode === null ? null : (UNITS[unitCode] ?? null), passedOver(passed));
}

const unreadable = (reason: string): ReadDrawing =>
  refuse(
    `The file is not readable as DXF: ${reason}`,
    'Save the drawing as DXF in text form (not binary), and open it again.',
  );

/** The vertices that follow a POLYLINE taken into it; the marks of its end left out. */
function withVertices(entities: readonly Entity[]): Entity[] {
  const whole: { type: string; pairs: Entity['pairs'][number][] }[] = [];
  for (const { type, pairs } of entities) {
    const isVertex = type === 'VERTEX' && whole.at(-1)?.type === 'POLYLINE';
    // The base point of a POLYLINE has the codes of a vertex and is none.
    if (type === 'POLYLINE')
      whole.push({ type, pairs: pairs.filter(({ code }) => code !== 10 && code !== 20) });
    else if (isVertex) whole.at(-1)!.pairs.push(...pairs.filter(({ code }) => [10, 20, 42].includes(code)));
    else if (type !== 'SEQEND' && type !== 'VERTEX') whole.push({ type, pairs: [...pairs] });
  }
  return whole;
}

function pieceOf(entity: Entity): DrawnLine | null {
  const points = pointsOf(entity);
  if (points.length < 2 || points.some(({ x, y }) => !(Number.isFinite(x) && Number.isFinite(y))))
    return null;
  return { layer: textOf(entity, 8) ?? '', name: '', points, isClosed: isClosed(entity) };
}

/** Bit 1 of the flags of a polyline (DXF reference, group code 70). */
const isClosed = (entity: Entity): boolean =>
  entity.type.endsWith('POLYLINE') && Number(textOf(entity, 70)) % 2 === 1;

function pointsOf(entity: Entity): Point[] {
  const number = (code: number): number => numberOf(entity, code);
  switch (entity.type) {
    case 'LINE':
      return [
        { x: number(10), y: number(20) },
        { x: number(11), y: number(21) },
      ];
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return polyline(verticesOf(entity), isClosed(entity));
    case 'ARC': {
      // Arcs run anticlockwise from start to end.
      const [start, end, turn] = [fromDegrees(number(50)), fromDegrees(number(51)), 2 * Math.PI];
      const sweep = (((end - start) % turn) + turn) % turn || turn;
      return arcPoints({ x: number(10), y: number(20) }, number(40), start, sweep);
    }
    default:
      return [];
  }
}

interface Vertex extends Point {
  readonly bulge: number;
}

function verticesOf({ pairs }: Entity): Vertex[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of pairs) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: Number.parseFloat(value), y: Number.NaN, bulge: 0 });
    else if (code === 20 && last) last.y = Number.parseFloat(value);
    else if (code === 42 && last) last.bulge = Number.parseFloat(value);
  }
  return vertices;
}

function polyline(vertices: readonly Vertex[], isRound: boolean): Point[] {
  const [first] = vertices;
  if (!first) return [];
  // Too many to be kept: not bent first.
  if (vertices.length > MOST_POINTS) return vertices.map(({ x, y }) => ({ x, y }));
  const ends = isRound ? [...vertices.slice(1), first] : vertices.slice(1);
  return [
    { x: first.x, y: first.y },
    ...ends.flatMap(({ x, y }, index) => bulgePoints(vertices[index]!, { x, y }, vertices[index]!.bulge)),
  ];
}
