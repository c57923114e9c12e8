import type { PourRecord } from '$src/core/pour/record';
import { coldOf } from './coldOf';
import type { Reason } from './verdictReasons';
import { percentText, secondsText } from './wording';

/** Less time than this before the metal goes stiff is near a limit: coat and die are not known closer. Ours, no source [s]. */
const CLOSE = 0.5;

/** Nothing lapped or stopped, but some of the metal came near it. */
export const isCloseToFreezing = ({ figures: { lap } }: PourRecord): boolean =>
  lap !== null && lap.kind === 'none' && lap.margin < CLOSE;

/** Cold metal: where it laps, why it stops, or how near it came to that; null when it was not near. */
export function coldReason(record: PourRecord): Reason | null {
  const { figures, folds, plan } = record;
  const { lap, finalShare } = figures;
  if (!lap) return null;
  if (lap.kind === 'none') return isCloseToFreezing(record) ? closeReason(lap.margin) : null;
  const cold = coldOf(record);
  if (cold === 'none') return null;
  if (cold === 'misrun') {
    const solid = plan.heat ? ` at ${percentText(plan.heat.freezing.coherency)} solid` : '';
    return {
      name: 'misrun',
      line: `Metal goes too stiff to run${solid}, with the die ${percentText(finalShare)} full.`,
    };
  }
  const cause = folds.find((fold) => fold.kind === 'lap')?.cause ?? '';
  const late =
    lap.margin < 0 ? `The slowest place fills ${secondsText(-lap.margin)} after its metal goes stiff.` : '';
  return { name: 'laps', line: [cause, late].filter((words) => words !== '').join(' ') };
}

const closeReason = (margin: number): Reason => ({
  name: 'close to freezing',
  line: `The coldest metal had only ${secondsText(margin)} left before it is too stiff to run; a little more coat lost or a colder die, and it laps or stops.`,
});
