import type { PourPlan } from '$src/core/pour/plan';
import type { FrontLed, FrontLedTry } from '$src/core/pour/record';
import type { StagedTilt } from '$src/core/tilt/asStages';
import { motionOf } from '$src/core/tilt/motionOf';
import { turnsOf } from '$src/core/tilt/turns';
import { toDegrees, toMillimetres } from '$src/core/units';
import type { Curve } from './series';
import { angleText, countText, fixed, listText, secondsText, speedText } from './wording';

/** How a front-led tilt was found, in words: peaks before and after, and what was not reached. */
export function frontLedSentence({ tries, chosen }: FrontLed, { tilt, liquid }: PourPlan): string {
  const before = tries[0]!;
  const after = tries[chosen]!;
  const peak = (one: FrontLedTry) =>
    one.peakFrontSpeed === null ? 'no front' : speedText(one.peakFrontSpeed);
  const asked = tilt.kind === 'front-led' ? tilt.share * liquid.criticalSpeed : after.wished;
  const wanted = `Wanted ${speedText(asked)}`;
  const hurried =
    after.wished > asked * 1.001 ? `; hurried to ${speedText(after.wished)} so as to be home in time` : '';
  const peaks =
    chosen === 0
      ? `the front peaks at ${peak(after)} as the level fill has it, and no correction bettered that`
      : `the front peaks at ${peak(before)} as the level fill has it, at ${peak(after)} after ${countText(chosen, 'correction')}`;
  return `${wanted}${hurried}: ${peaks}. ${foldWords(before, after, chosen)}${homeWords(after, tilt)}`;
}

function foldWords(before: FrontLedTry, after: FrontLedTry, chosen: number): string {
  if (chosen === 0) return `${capital(countText(after.folds, 'fold'))}.`;
  return `Folds: ${before.folds} before, ${after.folds} after.`;
}

function homeWords({ homeTime, lap }: FrontLedTry, tilt: PourPlan['tilt']): string {
  const told: string[] = [];
  if (homeTime === null) told.push('the front does not reach the die end');
  else if (tilt.kind === 'front-led' && tilt.homeWithin !== null && homeTime > tilt.homeWithin)
    told.push(`the front takes ${secondsText(homeTime)} to the die end, longer than it may`);
  if (lap === 'laps') told.push('it is still cold enough to lap');
  if (lap === 'misrun') told.push('the metal stiffens before the die is full');
  return told.length === 0 ? '' : ` ${capital(listText(told))}.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "to +9° in 1.0 s (21 °/s), to −4° in 1.5 s (9 °/s) …". */
export function stagesText(tilt: StagedTilt): string {
  const told = turnsOf(tilt).map(
    ({ to, time, rate }) =>
      `to ${angleText(to, 0)} in ${fixed(time, 1)} s (${fixed(toDegrees(rate), 0)} °/s)`,
  );
  return `${listText(told)}.`;
}

/** Front speed [m/s] of one try by place [mm]. */
export const ledSpeedCurve = ({ place, speed }: FrontLedTry): Curve => ({
  x: Array.from(place, toMillimetres),
  y: Array.from(speed),
});

const POINTS = 160;

/** Inclination [°] of one try against time [s]. */
export function ledTiltCurve({ tilt }: FrontLedTry): Curve {
  const motion = motionOf(tilt);
  const x = Array.from({ length: POINTS + 1 }, (_, i) => (motion.duration * i) / POINTS);
  return { x, y: x.map((time) => toDegrees(motion.inclinationAt(time))) };
}
