import type { PourPlan } from '$src/core/pour/plan';
import type { PageUnits } from '$src/core/units';
import { shownValue } from './quantities';
import { settingNamed } from './settings';

/** A setting changed to a value: "charge 0.61 kg". */
export function changeWords(plan: PourPlan, id: string, value: number, units: PageUnits): string {
  const setting = settingNamed(plan, id);
  return setting ? `${setting.name} ${shownValue(value, setting.quantity, units)}` : id;
}
