import type { PourRecord } from '$src/core/pour/record';
import { gasHeld } from './gasHeld';
import type { Reason } from './verdictReasons';
import { angleText, lengthText, listText, placeText, secondsText } from './wording';

/**
 * Share of the opening below which a way out for gas may shut on another mesh or with a little more metal. From 100 to
 * 400 mesh cells the share moves by up to 0.045 over the example pours, and where it was 0.05, 0.02 and 0.01 on 100, 200
 * and 400 cells the way was shut on 566. Ours, measured.
 */
const NARROW = 0.08;

/** Whether gas got out only just: metal nearly stood to the roof between it and the mouth, with no vent to serve it. */
export const isNearlyShut = ({ figures }: Pick<PourRecord, 'figures'>): boolean =>
  !gasHeld({ figures }) && figures.narrowestGasWay !== null && figures.narrowestGasWay.share < NARROW;

/** Said of a pour whose gas got out only just; null for others. */
export function nearlyShutReason({ figures, plan }: Pick<PourRecord, 'figures' | 'plan'>): Reason | null {
  const way = figures.narrowestGasWay;
  if (!way || !isNearlyShut({ figures })) return null;
  const where = `${placeText(way.place)} from the mouth, at ${secondsText(way.time)} and ${angleText(way.inclination)}`;
  const left = way.height < 5e-5 ? 'at the roof' : `within ${lengthText(way.height)} of the roof`;
  return {
    name: 'gas nearly shut in',
    line: `Gas behind has no open vent and leaves over metal that stands ${left} ${where}. A ripple or a little more metal shuts it in: ${ventWords(plan, way.place)}.`,
  };
}

/** What to do about the way out; a vent beyond that stands there already was under metal by then, or it would have served. */
function ventWords({ section: { vents, mouth } }: PourRecord['plan'], place: number): string {
  const beyond = vents.filter((vent) => vent.blocked < 1 && vent.place > mouth + place);
  if (beyond.length === 0)
    return `vent the die beyond that place, past x ${placeText(mouth + place)} in the table of vents`;
  const at = listText(beyond.map((vent) => `x ${placeText(vent.place)}`));
  const [stands, them] = beyond.length > 1 ? ['vents', 'them'] : ['vent', 'it'];
  return `the ${stands} beyond, at ${at}, did not serve it by then; put ${them} where metal comes last, or turn more slowly`;
}
