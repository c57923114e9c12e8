import type { Point } from '$src/core/section/section';
import { bulgePoints } from './curves';
import { MOST_POINTS } from './drawing';
import { type Entity, type Pair, textOf } from './dxfPairs';

/** The bit of a VERTEX that is only a handle of the curve fitted to its polyline (DXF reference, group code 70). */
const HANDLE = 16;

/** The vertices that follow a POLYLINE taken into it; the marks of its end left out. */
export function withVertices(entities: readonly Entity[]): Entity[] {
  const whole: Entity[] = [];
  let vertices: Pair[] | null = null;
  for (const entity of entities) {
    const { type, pairs } = entity;
    if (type === 'POLYLINE') {
      // The base point of a POLYLINE has the codes of a vertex and is none.
      vertices = pairs.filter(({ code }) => code !== 10 && code !== 20);
      whole.push({ type, pairs: vertices });
    } else if (type === 'VERTEX') {
      if (vertices && (flagsOf(entity) & HANDLE) === 0)
        vertices.push(...pairs.filter(({ code }) => [10, 20, 42].includes(code)));
    } else if (type !== 'SEQEND') {
      vertices = null;
      whole.push(entity);
    }
  }
  return whole;
}

const flagsOf = (entity: Entity): number => Number(textOf(entity, 70));

/** Bit 1 of the flags of a polyline (DXF reference, group code 70). */
export const isClosedPolyline = (entity: Entity): boolean => flagsOf(entity) % 2 === 1;

/** Bit 8 of a POLYLINE's flags: its vertices are places in space, whatever its extrusion. */
export const isInSpace = (entity: Entity): boolean =>
  entity.type === 'POLYLINE' && (flagsOf(entity) & 8) !== 0;

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

/** Points of a LWPOLYLINE or POLYLINE, bent by its bulges; their chords stray by `stray` at most. */
export function polylinePoints(entity: Entity, stray: number): Point[] {
  const vertices = verticesOf(entity);
  const [first] = vertices;
  if (!first) return [];
  // Too many to be kept: not bent first.
  if (vertices.length > MOST_POINTS) return vertices.map(({ x, y }) => ({ x, y }));
  const ends = isClosedPolyline(entity) ? [...vertices.slice(1), first] : vertices.slice(1);
  return [
    { x: first.x, y: first.y },
    ...ends.flatMap(({ x, y }, index) =>
      bulgePoints(vertices[index]!, { x, y }, vertices[index]!.bulge, stray),
    ),
  ];
}
