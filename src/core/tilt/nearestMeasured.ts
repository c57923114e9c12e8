import { fromDegrees } from '$src/core/units';
import { motionOf } from './motionOf';
import { nearestKnots } from './nearestKnots';
import type { KnotTilt, PlainTilt } from './tilt';

/** A tilt that strays further from what was measured is another tilt [rad]. Ours, no source. */
const NEAR = fromDegrees(5);

/**
 * The nearest tilt that the model reaches to one that was measured, as a drawn one; null when it strays from a reading by
 * more than 5°. The machine did turn as was read, so that readings further out are counted from another zero or are
 * wrong, and no other tilt stands for them.
 */
export function nearestMeasured(tilt: KnotTilt): PlainTilt | null {
  const nearest = nearestKnots(tilt);
  if (!nearest) return null;
  const motion = motionOf(nearest);
  const readings = [{ time: 0, inclination: tilt.start }, ...tilt.knots];
  const isNear = readings.every(
    ({ time, inclination }) => Math.abs(motion.inclinationAt(time) - inclination) <= NEAR,
  );
  return isNear ? nearest : null;
}
