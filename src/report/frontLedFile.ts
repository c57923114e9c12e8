import type { PourRecord } from '$src/core/pour/record';
import { asStages, greatestStray } from '$src/core/tilt/asStages';
import { turnsOf } from '$src/core/tilt/turns';
import { toDegrees } from '$src/core/units';
import { frontLedSentence, stagesText, strayText } from './frontLedWords';
import { countText } from './wording';

/** How a front-led tilt was found, as plain data for a JSON file; nothing when the tilt was given. */
export function frontLedJson({ frontLed }: PourRecord) {
  if (!frontLed) return {};
  const { tries, chosen } = frontLed;
  const { tilt } = tries[chosen]!;
  const stages = asStages(tilt);
  return {
    front_led: {
      chosen,
      tries: tries.map((one) => ({
        wanted_m_per_s: one.wished,
        peak_front_speed_m_per_s: one.peakFrontSpeed,
        home_time_s: one.homeTime,
        folds: one.folds,
      })),
      tilt: [{ time: 0, inclination: tilt.start }, ...tilt.knots].map(({ time, inclination }) => ({
        time_s: time,
        inclination_deg: toDegrees(inclination),
      })),
      stages_stray_deg: toDegrees(greatestStray(tilt, stages)),
      stages: turnsOf(stages).map(({ to, time, rate }) => ({
        to_deg: toDegrees(to),
        time_s: time,
        rate_deg_per_s: toDegrees(rate),
      })),
    },
  };
}

/** The same in lines of text; empty when the tilt was given. */
export function frontLedText({ frontLed, plan }: PourRecord): string {
  if (!frontLed) return '';
  const { tilt } = frontLed.tries[frontLed.chosen]!;
  const stages = asStages(tilt);
  const told = `In ${countText(stages.stages.length, 'stage')}: ${stagesText(stages)}`;
  return `  ${frontLedSentence(frontLed, plan)}\n  ${told}\n  ${strayText(tilt, stages)}\n`;
}
