import type { PourRecord } from '$src/core/pour/record';
import { toSquareMillimetres } from '$src/core/units';
import { gasHeld } from './gasHeld';
import type { Reason } from './verdictReasons';
import { fixed, percentText, secondsText, significant } from './wording';

/** Less time than this before the metal goes stiff is told: coat and die are not known closer. Ours, no source [s]. */
const CLOSE = 0.5;

/** Cold metal: where it laps, why it stops, or how near it came to that; null when it was not near. */
export function coldReason({ figures, folds, plan }: PourRecord): Reason | null {
  const { lap, finalShare } = figures;
  if (!lap) return null;
  if (lap.kind === 'none') return lap.margin < CLOSE ? closeReason(lap.margin) : null;
  if (lap.kind === 'misrun') {
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
  line: `The slowest place fills only ${secondsText(margin)} before its metal goes stiff; a little more coat lost or a colder die laps.`,
});

/** Gas that keeps the die from filling, with the vent it needs; null when none does. */
export function gasReason(record: PourRecord): Reason | null {
  if (!gasHeld(record)) return null;
  const areas = record.folds.flatMap(({ kind, details }) =>
    kind === 'gas sealed in' ? [details['vent_area_for_100_Pa_m2'] ?? 0] : [],
  );
  const area = toSquareMillimetres(Math.max(0, ...areas));
  const needed =
    area > 0
      ? ` It needs about ${area < 1 ? fixed(area, 1) : significant(area)} mm² of free vent where it is shut in.`
      : '';
  const hasVents = record.plan.section.vents.some(({ blocked }) => blocked < 1);
  const why = hasVents
    ? 'Metal shuts gas in where no vent reaches it: each is elsewhere, or covered by then.'
    : 'Metal shuts gas in that has no open vent.';
  return { name: 'gas held', line: `${why}${needed}` };
}
