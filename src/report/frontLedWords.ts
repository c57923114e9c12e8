import type { PourPlan } from '$src/core/pour/plan';
import type { FrontLed, FrontLedTry } from '$src/core/pour/record';
import { greatestStray, type StagedTilt } from '$src/core/tilt/asStages';
import { motionOf } from '$src/core/tilt/motionOf';
import { usableLimits } from '$src/core/tilt/range';
import type { PlainTilt } from '$src/core/tilt/tilt';
import { turnsOf } from '$src/core/tilt/turns';
import { toDegrees, toMillimetres } from '$src/core/units';
import { isBrimful } from './brimful';
import type { Curve } from './series';
import { angleText, capital, countText, fixed, listText, secondsText, speedText } from './wording';

/** A peak this much over what was asked for is no wish fulfilled. */
const MISSED = 1.1;

/** How a front-led tilt was found, in words: peaks before and after, and what was not reached. */
export function frontLedSentence({ tries, chosen }: FrontLed, plan: PourPlan): string {
  const { tilt, liquid } = plan;
  const before = tries[0]!;
  const after = tries[chosen]!;
  const peak = (one: FrontLedTry) =>
    one.peakFrontSpeed === null ? 'no front' : speedText(one.peakFrontSpeed);
  const asked = tilt.kind === 'front-led' ? tilt.share * liquid.criticalSpeed : after.wished;
  const wanted = `Wanted ${speedText(asked)}`;
  const mustBeHome = tilt.kind === 'front-led' && tilt.homeWithin !== null;
  const hurried =
    mustBeHome && after.wished > asked * 1.001
      ? `; hurried to ${speedText(after.wished)} so as to be at the die end in time`
      : '';
  const peaks =
    chosen === 0
      ? `the front peaks at ${peak(after)} as the level fill has it, and no correction bettered that`
      : `the front peaks at ${peak(before)} as the level fill has it, at ${peak(after)} after ${countText(chosen, 'correction')}`;
  return `${wanted}${hurried}: ${peaks}. ${missedWords(after, isBrimful(plan))}${foldWords(before, after, chosen)}${homeWords(after, tilt)}`;
}

/** That the wish was not met, and what lowers the peak: see the test of what the model bears out. */
function missedWords({ peakFrontSpeed, wished, tilt }: FrontLedTry, isFull: boolean): string {
  if (peakFrontSpeed === null || peakFrontSpeed <= MISSED * wished) return '';
  const over = `${fixed((peakFrontSpeed / wished - 1) * 100, 0)} %`;
  const slow = isAtSlowest(tilt)
    ? ' The machine already turns at its slowest on the way; one that can turn slower helps too.'
    : '';
  const mend = isFull
    ? 'It is full to the brink already: what is left is a higher start, from which the basin holds more metal, a lower sill, or a longer basin with more metal, which comes over the lip earlier.'
    : 'A fuller basin, or a shorter one for the same weight, lets metal past the mouth earlier, and its front runs slower.';
  return `The wish is not reached with this basin: the front runs ${over} over it. ${mend}${slow} `;
}

/** A rate this near the slowest is the slowest, in the middle of the tilt where it does not come from rest or go to it. */
const AT_SLOWEST = 1.05;
const MIDDLE = { from: 0.1, to: 0.9 } as const;

function isAtSlowest(tilt: FrontLedTry['tilt']): boolean {
  const { duration, rateAt } = motionOf(tilt);
  const { slowest } = usableLimits(tilt.limits);
  return Array.from(
    { length: POINTS + 1 },
    (_, i) => MIDDLE.from + ((MIDDLE.to - MIDDLE.from) * i) / POINTS,
  ).some((share) => Math.abs(rateAt(share * duration)) <= AT_SLOWEST * slowest);
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
  const isHurried = tilt.kind === 'front-led' && tilt.homeWithin !== null;
  if (lap === 'laps')
    told.push(
      `it is ${isHurried ? 'still ' : ''}cold enough to lap${isHurried ? '' : ': ask for it at the die end in time, and it is hurried'}`,
    );
  if (lap === 'misrun') told.push('the metal stiffens before the die is full');
  return told.length === 0 ? '' : ` ${capital(listText(told))}.`;
}

/** "to +9.4° in 1.0 s (21 °/s), to −4.0° in 1.5 s (9 °/s) …": what is handed over, to the last digit. */
export function stagesText(tilt: StagedTilt): string {
  const told = turnsOf(tilt).map(
    ({ to, time, rate }) => `to ${angleText(to)} in ${fixed(time, 1)} s (${fixed(toDegrees(rate), 0)} °/s)`,
  );
  return `${listText(told)}.`;
}

/** How near stages come to the tilt they tell, and what to do about it. */
export function strayText(tilt: PlainTilt, stages: StagedTilt): string {
  const stray = fixed(toDegrees(greatestStray(tilt, stages)), 1);
  return `They stray from it by ${stray}° at most. Run the pour with them and compare its peak before believing them.`;
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
