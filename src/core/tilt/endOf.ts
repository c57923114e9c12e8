import type { Tilt } from './tilt';

/** The inclination a tilt ends at [rad]; that of the start when it has no stage or knot yet. */
export function endOf(tilt: Tilt): number {
  switch (tilt.kind) {
    case 'staged':
      return tilt.stages.at(-1)?.to ?? tilt.start;
    case 'drawn':
    case 'measured':
      return tilt.knots.at(-1)?.inclination ?? tilt.start;
    default:
      return tilt.end;
  }
}
