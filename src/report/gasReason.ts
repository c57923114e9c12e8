import type { PourRecord } from '$src/core/pour/record';
import type { Vent } from '$src/core/section/section';
import { toMillimetres, toSquareMillimetres } from '$src/core/units';
import { firstOfGasAndRest } from './coldOf';
import { gasHeld } from './gasHeld';
import { coveredFrom, type HeldPocket, heldPocket } from './heldPocket';
import { ventNeeded } from './ventNeeded';
import type { Reason } from './verdictReasons';
import { fixed, listText, placeText, secondsText, significant } from './wording';

/** Gas that keeps the die from filling: where it lies, why no vent lets it out, and the vent it needs; null when none does. */
export function gasReason(record: PourRecord): Reason | null {
  if (!gasHeld(record)) return null;
  const pocket = heldPocket(record);
  const vents = record.plan.section.vents.filter(({ blocked }) => blocked < 1);
  const where = pocket ? ` ${spanText(pocket)} from the mouth (${ventPlaceText(record, pocket)})` : '';
  const why =
    vents.length === 0
      ? `Metal shuts gas in${where} that has no open vent.`
      : `Metal shuts gas in${where} where no vent reaches it: ${ventsText(record, vents, pocket)}.`;
  return { name: 'gas held', line: `${why}${neededText(record)}${orderText(record)}` };
}

/** Vents are typed in from the back wall. */
const ventPlaceText = ({ plan: { section } }: PourRecord, { from, to }: HeldPocket): string =>
  `x ${fixed(toMillimetres(section.mouth + from), 0)} to ${placeText(section.mouth + to)} in the table of vents`;

const spanText = ({ from, to }: HeldPocket): string =>
  `between ${fixed(toMillimetres(from), 0)} and ${placeText(to)}`;

/** What became of each open vent; more than a few are told together. */
function ventsText(record: PourRecord, vents: readonly Vent[], pocket: HeldPocket | null): string {
  if (vents.length > MOST_VENTS) return 'each is elsewhere, or covered by then';
  return listText(vents.map((vent) => ventText(record, vent, pocket)));
}
const MOST_VENTS = 3;

function ventText(record: PourRecord, { place }: Vent, pocket: HeldPocket | null): string {
  const along = place - record.plan.section.mouth;
  const at = along < 0 ? 'the vent over the basin' : `the vent at ${placeText(along)}`;
  const covered = coveredFrom(record, place);
  if (covered !== null) return `${at} is covered by metal from ${secondsText(covered)} on`;
  const isInside = pocket !== null && along >= pocket.from && along <= pocket.to;
  return isInside ? `${at} opens into it but lets too little out` : `${at} lies elsewhere`;
}

/** The free area that would have let the gas go as fast as the metal came. */
function neededText(record: PourRecord): string {
  const area = toSquareMillimetres(ventNeeded(record));
  if (area === 0) return '';
  const each = record.plan.section.cavities > 1 ? ', in each cavity' : '';
  return ` It needs about ${area < 1 ? fixed(area, 1) : significant(area)} mm² of free vent where it is shut in${each}.`;
}

/** Where metal went stiff besides: which of the two stopped the front. */
function orderText(record: PourRecord): string {
  const order = firstOfGasAndRest(record);
  if (record.figures.lap?.kind !== 'misrun' || order === null) return '';
  const [gas, front] = [secondsText(order.gas), secondsText(order.rest)];
  return order.first === 'gas'
    ? ` Gas came first: it was shut in at ${gas}, before the front came to rest at ${front} and its metal went stiff.`
    : ` The front came to rest first, at ${front}, and gas was shut in at ${gas}: a vent alone does not fill the die.`;
}
