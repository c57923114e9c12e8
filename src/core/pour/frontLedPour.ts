import { FRONT_LED_ACCELERATION, frontLedTilt } from '$src/core/tilt/frontLed';
import { motionOf } from '$src/core/tilt/motionOf';
import type { FrontLedTilt, KnotTilt } from '$src/core/tilt/tilt';
import { type FrontLedPlan, ledPath } from './ledByLevel';
import type { FrontLedTry, PourRecord, Progress } from './record';
import { runPour } from './runPour';

export interface FrontLedResult {
  /** All that were run, the uncorrected tilt first. */
  readonly tries: readonly FrontLedTry[];
  /** Which of them is the best: home in time and not cold, then the one with the lowest peak. */
  readonly chosen: number;
  /** Record of the chosen one. */
  readonly record: PourRecord;
}

const MOST_TRIES = 5;
/** A peak this little over the wish is met. */
const NEAR = 1.02;
/** A correction works from this far before the overshoot [rad]: the metal that runs fast was let go earlier. */
const AHEAD = 0.12;
/** A front that comes home late or cold is asked to be this much quicker, or as much as it was late if that is less. */
const MOST_HURRY = 1.5;
const COLD_HURRY = 1.25;

/**
 * Works out the tilt of a pour that is to be front-led: first from the level fill, then by running it, at most five
 * times in all. Where the front overshot, the rate there and a little before it is bounded to what it was
 * times wish over speed; a front that has to be home in time and comes too late or laps is asked for more speed, up to
 * critical.
 */
export function* frontLedPour(
  plan: FrontLedPlan,
): Generator<Progress, FrontLedResult, { stop: boolean } | undefined> {
  const { share, limits } = plan.tilt;
  const critical = plan.liquid.criticalSpeed;
  const path = ledPath(plan);
  const mostRates = new Map<number, number>();
  const mostAt = (inclination: number) => mostRates.get(gridOf(inclination)) ?? Number.POSITIVE_INFINITY;
  const tries: FrontLedTry[] = [];
  const records: PourRecord[] = [];
  let speed = share * critical;
  while (tries.length < MOST_TRIES) {
    const tilt = frontLedTilt(path, { speed, acceleration: FRONT_LED_ACCELERATION, limits }, mostAt);
    const record = yield* shareOf(runPour({ ...plan, tilt }), tries.length);
    records.push(record);
    tries.push(tryOf(record, tilt, speed));
    if (record.outcome.kind === 'stopped by the user') break;
    const hurry = hurryOf(record, plan.tilt);
    if (hurry > 1 && speed < critical) {
      speed = Math.min(critical, speed * hurry);
      // What was slowed before would keep the front from making up its time.
      mostRates.clear();
    } else if ((record.figures.peakFrontSpeed ?? 0) <= speed * NEAR) break;
    else slowDown(mostRates, record, tilt, speed);
  }
  const chosen = bestOf(records, plan.tilt);
  return { tries, chosen, record: records[chosen]! };
}

/** Progress of one try as its part of all that may come. */
function* shareOf(
  run: Generator<Progress, PourRecord, { stop: boolean } | undefined>,
  index: number,
): Generator<Progress, PourRecord, { stop: boolean } | undefined> {
  let step = run.next();
  while (!step.done) step = run.next(yield { ...step.value, done: (index + step.value.done) / MOST_TRIES });
  return step.value;
}

const tryOf = ({ figures, folds, frontSpeeds }: PourRecord, tilt: KnotTilt, speed: number): FrontLedTry => ({
  tilt,
  wished: speed,
  peakFrontSpeed: figures.peakFrontSpeed,
  homeTime: homeTimeOf(figures),
  lap: figures.lap?.kind ?? null,
  folds: folds.length,
  place: frontSpeeds.place,
  speed: frontSpeeds.speed,
});

/** From the mouth to the die end [s]; null when the front did not get there. */
function homeTimeOf({ firstFlowTime, arrivalTime }: PourRecord['figures']): number | null {
  return firstFlowTime === null || arrivalTime === null ? null : arrivalTime - firstFlowTime;
}

/** How much quicker the front should be: 1 when it came home in time and hot enough, or when that was not asked for. */
function hurryOf({ figures }: PourRecord, { homeWithin }: FrontLedTilt): number {
  if (homeWithin === null) return 1;
  const late = (homeTimeOf(figures) ?? Number.POSITIVE_INFINITY) / homeWithin;
  // Gas that keeps metal out leaves it to freeze, however quick it came: hurry would make that worse.
  const isCold = figures.lap !== null && figures.lap.kind !== 'none' && !figures.gasHeld;
  const cold = isCold ? COLD_HURRY : 1;
  return Math.min(Math.max(late, cold), MOST_HURRY);
}

function bestOf(records: readonly PourRecord[], tilt: FrontLedTilt): number {
  const ranks = records.map((record) => ({
    hurry: hurryOf(record, tilt),
    peak: record.figures.peakFrontSpeed ?? Number.POSITIVE_INFINITY,
  }));
  let best = 0;
  ranks.forEach(({ hurry, peak }, i) => {
    const before = ranks[best]!;
    if (hurry < before.hurry || (hurry === before.hurry && peak < before.peak)) best = i;
  });
  return best;
}

/** Inclinations the rates are kept at [rad]. */
const GRID = 0.01;
const gridOf = (inclination: number): number => Math.round(inclination / GRID);

/** Bounds the rate where the front overshot, and a little before, to what it was there times limit over speed. */
function slowDown(
  mostRates: Map<number, number>,
  { frontSpeeds }: PourRecord,
  tilt: KnotTilt,
  limit: number,
): void {
  const rates = ratesOf(tilt);
  frontSpeeds.speed.forEach((speed, i) => {
    if (!(speed > limit)) return;
    const at = frontSpeeds.inclination[i]!;
    for (let k = gridOf(at); k <= gridOf(at + AHEAD); k++) {
      const rate = rates.get(k);
      if (rate !== undefined)
        mostRates.set(k, Math.min(mostRates.get(k) ?? Number.POSITIVE_INFINITY, (rate * limit) / speed));
    }
  });
}

const LOOKS = 4000;

/** How quick the body turned at each inclination of the grid [rad/s]. */
function ratesOf(tilt: KnotTilt): ReadonlyMap<number, number> {
  const motion = motionOf(tilt);
  const rates = new Map<number, number>();
  for (let i = 0; i < LOOKS; i++) {
    const time = (motion.duration * i) / LOOKS;
    rates.set(gridOf(motion.inclinationAt(time)), Math.abs(motion.rateAt(time)));
  }
  return rates;
}
