import type { ChargeValue } from '$src/cells/evaluate';
import type { ChargeBy } from '$src/cells/kinds';
import { fromMillimetres } from '$src/core/units';

/** Just below the lip: where a founder fills to when nothing else is said. */
const BELOW_LIP = fromMillimetres(-1);
const HEAD_WANTED = fromMillimetres(30);
const MASS = 0.5;

/** The same charge told another way; when it has no such figure, a usual one. */
export function chargeAs(by: ChargeBy['by'], charge: ChargeBy, value: ChargeValue | null): ChargeBy {
  if (by === charge.by) return charge;
  if (by === 'mass') return { by, mass: value?.mass ?? MASS };
  if (by === 'fill level') return { by, fromLip: value?.fromLip ?? BELOW_LIP };
  return { by, head: value?.head ?? HEAD_WANTED };
}
