import type { PourRecord } from '$src/core/pour/record';
import { asStages } from '$src/core/tilt/asStages';
import { turnsOf } from '$src/core/tilt/turns';
import { toDegrees } from '$src/core/units';
import { frontLedSentence, stagesText } from './frontLedWords';

/** How a front-led tilt was found, as plain data for a JSON file; nothing when the tilt was given. */
export function frontLedJson({ frontLed }: PourRecord) {
  if (!frontLed) return {};
  const { tries, chosen } = frontLed;
  const { tilt } = tries[chosen]!;
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
      stages: turnsOf(asStages(tilt)).map(({ to, time, rate }) => ({
        to_deg: toDegrees(to),
        time_s: time,
        rate_deg_per_s: toDegrees(rate),
      })),
    },
  };
}

/** The same in two lines of text; empty when the tilt was given. */
export function frontLedText({ frontLed, plan }: PourRecord): string {
  if (!frontLed) return '';
  const stages = asStages(frontLed.tries[frontLed.chosen]!.tilt);
  return `  ${frontLedSentence(frontLed, plan)}\n  In ${stages.stages.length} stages: ${stagesText(stages)}\n`;
}
