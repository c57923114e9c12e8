import type { Point } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import { applied, MIRRORED } from './affine';
import { arcPoints } from './curves';
import { type Entity, numberOf } from './dxfPairs';
import { isClosedPolyline, isInSpace, polylinePoints } from './dxfPolyline';
import { isClosedSpline, splinePoints } from './dxfSpline';

const TURN = 2 * Math.PI;

/**
 * Points of a drawn thing in the frame it stands in; none of one that is no line. Curves are cut into chords that stray
 * by `stray` at most [units of that frame].
 */
export function pointsOf(entity: Entity, stray: number): Point[] {
  const points = flattened(entity, stray);
  const isSeenFromBehind = IN_OWN_FRAME.has(entity.type) && !isInSpace(entity) && facesAway(entity);
  return isSeenFromBehind ? points.map((point) => applied(MIRRORED, point)) : points;
}

const LINES = new Set(['LINE', 'LWPOLYLINE', 'POLYLINE', 'ARC', 'CIRCLE', 'ELLIPSE', 'SPLINE']);

/** Whether it is of a kind that is read. */
export const isLine = ({ type }: Entity): boolean => LINES.has(type);

/** Whether a line is given that ends where it begins. */
export const isClosed = (entity: Entity): boolean =>
  entity.type.endsWith('POLYLINE')
    ? isClosedPolyline(entity)
    : entity.type === 'SPLINE' && isClosedSpline(entity);

/** Things whose places are in the frame that their extrusion direction gives (DXF reference, "OCS"). */
const IN_OWN_FRAME = new Set(['ARC', 'CIRCLE', 'LWPOLYLINE', 'POLYLINE']);

/**
 * Whether the extrusion direction (210, 220, 230) is away from the eye. By the arbitrary axis algorithm of the DXF
 * reference its frame then has left and right changed. A thing in a plane that is tilted is read as drawn in it.
 */
export function facesAway(entity: Entity): boolean {
  const [x, y, z] = [210, 220, 230].map((code) => numberOf(entity, code)) as [number, number, number];
  return z < 0 && Math.hypot(x, y) < -z / 64;
}

function flattened(entity: Entity, stray: number): Point[] {
  const number = (code: number): number => numberOf(entity, code);
  switch (entity.type) {
    case 'LINE':
      return [
        { x: number(10), y: number(20) },
        { x: number(11), y: number(21) },
      ];
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return polylinePoints(entity, stray);
    case 'ARC': {
      const [start, end] = [fromDegrees(number(50)), fromDegrees(number(51))];
      const centre = { x: number(10), y: number(20) };
      return arcPoints({ centre, radius: number(40), start, sweep: sweepOf(start, end) }, stray);
    }
    case 'CIRCLE':
      return arcPoints(
        { centre: { x: number(10), y: number(20) }, radius: number(40), start: 0, sweep: TURN },
        stray,
      );
    case 'ELLIPSE':
      return ellipsePoints(entity, stray);
    case 'SPLINE':
      return splinePoints(entity, stray);
    default:
      return [];
  }
}

/** Arcs run anticlockwise from start to end; all round when both are the same. */
const sweepOf = (start: number, end: number): number => (((end - start) % TURN) + TURN) % TURN || TURN;

/**
 * An arc of the unit circle laid over both half axes, so that its chords stray from it by the same share of them
 * (DXF reference, ELLIPSE: 11 and 21 the longer half axis, 40 the ratio of the axes, 41 and 42 the parameters).
 */
function ellipsePoints(entity: Entity, stray: number): Point[] {
  const number = (code: number): number => numberOf(entity, code);
  const alongX = { x: number(11), y: number(21) };
  // The shorter axis lies a quarter turn on, about the extrusion direction.
  const ratio = facesAway(entity) ? -number(40) : number(40);
  const alongY = { x: -alongX.y * ratio, y: alongX.x * ratio };
  const laid = { origin: { x: number(10), y: number(20) }, alongX, alongY };
  const [start, sweep] = [number(41), sweepOf(number(41), number(42))];
  // A stray of the unit circle becomes as many times larger as the longer half axis is.
  const longer = Math.hypot(alongX.x, alongX.y) * Math.max(1, Math.abs(ratio));
  const arc = arcPoints({ centre: { x: 0, y: 0 }, radius: 1, start, sweep }, stray / longer);
  return arc.map((point) => applied(laid, point));
}
