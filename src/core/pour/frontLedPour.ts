import { levelPath } from '$src/core/level/levelPath';
import { endOf } from '$src/core/tilt/endOf';
import { type FrontLedWish, frontLedTilt } from '$src/core/tilt/frontLed';
import { motionOf } from '$src/core/tilt/motionOf';
import type { KnotTilt } from '$src/core/tilt/tilt';
import { type PourPlan, PREVIEW_MESH_CELLS } from './plan';
import type { PourRecord, Progress } from './record';
import { runPour } from './runPour';

export interface FrontLedResult {
  readonly tilt: KnotTilt;
  /** Peak front speed of each run [m/s], the uncorrected tilt first; null where no front entered. */
  readonly peaks: readonly (number | null)[];
  /** Which of them the tilt is: the one with the lowest peak. */
  readonly chosen: number;
  readonly before: PourRecord;
  readonly after: PourRecord;
}

const MOST_RERUNS = 4;
/** A peak this little over the wish is met. */
const NEAR = 1.02;
/** A correction works from this far before the overshoot [rad]: the metal that runs fast was let go earlier. */
const AHEAD = 0.12;

/**
 * The front-led tilt of a pour, run on a coarse mesh and slowed where the dynamic front overshot: each time by limit
 * over speed at that inclination and a little before it, at most four times. The tilt with the lowest peak is given.
 */
export function* frontLedPour(
  plan: PourPlan,
  wish: FrontLedWish,
): Generator<Progress, FrontLedResult, { stop: boolean } | undefined> {
  const path = levelPath(plan.section, plan.volume, plan.tilt.start, endOf(plan.tilt), null);
  const mostRates = new Map<number, number>();
  const mostAt = (inclination: number) => mostRates.get(gridOf(inclination)) ?? Number.POSITIVE_INFINITY;
  const tilts: KnotTilt[] = [];
  const records: PourRecord[] = [];
  for (let rerun = 0; rerun <= MOST_RERUNS; rerun++) {
    const tilt = frontLedTilt(path, wish, mostAt);
    const record = yield* runPour(coarse(plan, tilt));
    tilts.push(tilt);
    records.push(record);
    if (record.outcome.kind === 'stopped by the user') break;
    if ((record.figures.peakFrontSpeed ?? 0) <= wish.speed * NEAR) break;
    slowDown(mostRates, record, wish.speed);
  }
  const peaks = records.map((record) => record.figures.peakFrontSpeed);
  const heights = peaks.map((peak) => peak ?? Number.POSITIVE_INFINITY);
  const chosen = heights.indexOf(Math.min(...heights));
  return { tilt: tilts[chosen]!, peaks, chosen, before: records[0]!, after: records[chosen]! };
}

const coarse = (plan: PourPlan, tilt: KnotTilt): PourPlan => ({
  ...plan,
  tilt,
  computation: { ...plan.computation, meshCells: PREVIEW_MESH_CELLS },
});

/** Inclinations the rates are kept at [rad]. */
const GRID = 0.01;
const gridOf = (inclination: number): number => Math.round(inclination / GRID);

/** Bounds the rate where the front overshot, and a little before, to what it was there times limit over speed. */
function slowDown(mostRates: Map<number, number>, { frontSpeeds, plan }: PourRecord, limit: number): void {
  const rates = ratesOf(plan);
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
function ratesOf({ tilt }: PourPlan): ReadonlyMap<number, number> {
  const motion = motionOf(tilt);
  const rates = new Map<number, number>();
  for (let i = 0; i < LOOKS; i++) {
    const time = (motion.duration * i) / LOOKS;
    rates.set(gridOf(motion.inclinationAt(time)), Math.abs(motion.rateAt(time)));
  }
  return rates;
}
