import type { Point } from '$src/core/section/section';
import { MOST_POINTS } from './drawing';
import { type Entity, numberOf, numbersOf } from './dxfPairs';
import { isNurbs, type Nurbs, nurbsPoints } from './nurbs';
import { throughPoints } from './throughPoints';

/**
 * Points of a SPLINE: by its control points where it has any, else through its fit points (DXF reference, SPLINE: 71
 * degree, 40 knots, 41 weights, 10 and 20 control points, 11 and 21 fit points). None when it cannot be read. Its chords
 * stray by `stray` at most.
 */
export function splinePoints(entity: Entity, stray: number): Point[] {
  const isFitted = isFitOnly(entity);
  const drawn = pointsOf(entity, isFitted ? 11 : 10);
  // Too many to be kept: not bent first.
  if (drawn.length > MOST_POINTS) return drawn;
  const nurbs = isFitted ? fitted(entity, drawn) : given(entity, drawn);
  return nurbs && isNurbs(nurbs) ? nurbsPoints(nurbs, stray) : [];
}

/** Whether a SPLINE says nothing of its curve but points that it goes through. */
export const isFitOnly = (entity: Entity): boolean =>
  entity.type === 'SPLINE' && numbersOf(entity, 10).length === 0 && numbersOf(entity, 11).length > 0;

/** Bit 1 of its flags (group code 70). */
export const isClosedSpline = (entity: Entity): boolean => numberOf(entity, 70) % 2 === 1;

function given(entity: Entity, controls: readonly Point[]): Nurbs {
  const weights = numbersOf(entity, 41);
  return {
    degree: numberOf(entity, 71),
    knots: numbersOf(entity, 40),
    controls,
    weights: weights.length === 0 ? controls.map(() => 1) : weights,
  };
}

const fitted = (entity: Entity, points: readonly Point[]): Nurbs | null =>
  throughPoints({
    points,
    startTangent: pointsOf(entity, 12)[0] ?? null,
    endTangent: pointsOf(entity, 13)[0] ?? null,
    isClosed: isClosedSpline(entity),
  });

/** Points whose x has this code, their y ten more; NaN where a y is missing, so that none is taken for another's. */
function pointsOf(entity: Entity, code: number): Point[] {
  const ys = numbersOf(entity, code + 10);
  return numbersOf(entity, code).map((x, index) => ({ x, y: ys[index] ?? Number.NaN }));
}
