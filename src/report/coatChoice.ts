import { coatTransfer } from '$src/core/heat/coat';
import { COATS } from '$src/core/heat/coats';
import { DEFAULT_DIE_TEMPERATURE, DEFAULT_TRANSFER } from '$src/core/pour/heatPlanOf';
import type { PourPlan } from '$src/core/pour/plan';
import type { Region } from '$src/core/section/section';
import { HEAT_TRANSFER, METRIC, type PageUnits } from '$src/core/units';
import { fixed } from './wording';

/** A transfer that belongs to no coat of the list. */
export const OWN_COAT = 'typed in';

/** Coats to choose from, with the transfer each comes to [W/(m² K)]. */
export const COAT_CHOICES: readonly { readonly name: string; readonly transfer: number }[] = COATS.map(
  (coat) => ({ name: coat.name, transfer: coatTransfer(coat) }),
);

/** What a region's coat comes to, with what is taken where nothing is said. */
export const transferOf = (region: Region): number => region.transfer ?? DEFAULT_TRANSFER;

/** Die temperature of each region of a pour [K], in the section's order. */
export const dieTemperaturesOf = ({ section, heat }: PourPlan): number[] =>
  section.regions.map(
    ({ dieTemperature }, k) => heat?.regions[k]?.dieTemperature ?? dieTemperature ?? DEFAULT_DIE_TEMPERATURE,
  );

/** A transfer of the list is known to a fifth at best: so many significant figures say what is known. */
const FIGURES = 2;
/** Nobody types so near to a transfer of the list [W/(m² K)]. */
const ROUND_OFF = 1e-3;

/** A heat transfer as it is shown [W/(m² K)]: of a coat of the list to two figures, one that was typed in as it was typed. */
export const shownTransfer = (transfer: number, units: PageUnits = METRIC): number =>
  COAT_CHOICES.some((coat) => Math.abs(coat.transfer - transfer) < ROUND_OFF)
    ? roundedTransfer(transfer, units)
    : transfer;

/** The same in words, with its unit. */
export function transferText(transfer: number, units: PageUnits): string {
  const { toShown, unit } = HEAT_TRANSFER[units.length];
  return `${fixed(toShown(shownTransfer(transfer, units)), 0)} ${unit}`;
}

/** A heat transfer worked out from one of the list, to as many figures of the page's unit [W/(m² K)]. */
export function roundedTransfer(transfer: number, units: PageUnits = METRIC): number {
  const { toShown, fromShown } = HEAT_TRANSFER[units.length];
  return fromShown(Number(toShown(transfer).toPrecision(FIGURES)));
}

/** The coat a transfer belongs to; a transfer between the coats is one's own. */
export function coatNameOf(transfer: number): string {
  const found = COAT_CHOICES.find((coat) => Math.abs(coat.transfer - transfer) < 0.5);
  return found?.name ?? OWN_COAT;
}
