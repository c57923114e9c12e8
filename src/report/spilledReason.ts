import { heldAtEnd } from '$src/core/level/heldAtEnd';
import type { PourRecord } from '$src/core/pour/record';
import { endOf } from '$src/core/tilt/endOf';
import { toCubicCentimetres } from '$src/core/units';
import { gasHeld } from './gasHeld';
import { spillStart } from './spillStart';
import type { Reason } from './verdictReasons';
import { angleText, secondsText, significant } from './wording';

/** Less than a drop that the mesh leaves at a rim is nothing spilled [cm³]. */
const LEAST = 0.5;

/** How much metal left over a rim: "67 cm³"; null when none did. */
export function spilledWords({
  figures,
}: {
  readonly figures: Pick<PourRecord['figures'], 'spilled'>;
}): string | null {
  const spilled = toCubicCentimetres(figures.spilled);
  return spilled > LEAST ? `${significant(spilled)} cm³` : null;
}

/** What to do about metal over a rim; the same wherever it is told. */
export const SPILL_CAUTION =
  'Molten metal over a rim burns, and explodes on anything wet: keep a dry sand bed or tray below and everybody away.';

/** Said of what a charge spills by the level fill, before any pour; the amount stands before it. */
export const SPILL_BY_LEVEL =
  'as the body turns, by the level fill; a pour may lose less, where metal has gone stiff in the feeder by then.';

/** Gas that keeps metal out of the die sends over the rim what the die would have held. */
function cureOf(record: PourRecord): string {
  const { section, volume, tilt } = record.plan;
  const byLevel = () => heldAtEnd(section, volume, tilt.start, endOf(tilt)).spilled;
  return gasHeld(record) && toCubicCentimetres(byLevel()) <= LEAST
    ? 'Gas held it out of the die, and by the level fill no rim spills: cure the gas first.'
    : 'Ladle less, or raise the rim.';
}

/** From when on, where the record tells it: who stands there must know. */
function sinceWords(record: PourRecord): string {
  const start = spillStart(record);
  return start ? `, from ${secondsText(start.time)} on, at ${angleText(start.inclination)}` : '';
}

/** Metal that left over a rim in the pour: a hazard, whatever becomes of the casting. */
export function spilledReason(record: PourRecord): Reason | null {
  const words = spilledWords(record);
  return words === null
    ? null
    : {
        name: 'metal spilled',
        line: `${words} left over a rim${sinceWords(record)}. ${SPILL_CAUTION} ${cureOf(record)}`,
      };
}
