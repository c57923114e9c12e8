import type { Feeding } from '$src/core/heat/afterFill';
import { setMetalOf } from '$src/core/heat/thermalMetals';
import type { PourPlan } from '$src/core/pour/plan';
import { feedingOf } from '$src/report/feederShortage';

/** What the feeder of a full die comes to with so much metal [kg], none of it spilled. @throws Error without a feeder */
export function feedingAt({ section, heat, liquid }: PourPlan, mass: number): Feeding {
  const metal = heat && setMetalOf(heat);
  if (!heat || !metal) throw new Error('The pour has no heat.');
  const feeding = feedingOf(section, heat, mass / liquid.density, metal.freezingShrinkage);
  if (!feeding) throw new Error('No metal is left over the mouth.');
  return feeding;
}
