import { levelPath } from '$src/core/level/levelPath';
import { FRONT_LED_ACCELERATION, type FrontPath, frontLedTilt } from '$src/core/tilt/frontLed';
import type { FrontLedTilt, KnotTilt } from '$src/core/tilt/tilt';
import type { PourPlan } from './plan';

/** A pour whose tilt is still to be worked out. */
export type FrontLedPlan = PourPlan & { readonly tilt: FrontLedTilt };

export const isFrontLed = (plan: PourPlan): plan is FrontLedPlan => plan.tilt.kind === 'front-led';

/** The level fill that leads the tilt. No stand: it would hold the front back and then let it jump. */
export const ledPath = ({ section, volume, tilt }: FrontLedPlan): FrontPath =>
  levelPath(section, volume, tilt.start, tilt.end, null);

/** The tilt as the level fill alone has it, before anything is run. */
export function ledByLevel(plan: FrontLedPlan): KnotTilt {
  const { share, limits } = plan.tilt;
  const wish = { speed: share * plan.liquid.criticalSpeed, acceleration: FRONT_LED_ACCELERATION, limits };
  return frontLedTilt(ledPath(plan), wish);
}
