import { describe, expect, it } from 'vitest';
import { volumeFromFillLevel } from '$src/core/level/fillLevel';
import type { PourPlan } from '$src/core/pour/plan';
import type { FrontLedTry } from '$src/core/pour/record';
import { asStages } from '$src/core/tilt/asStages';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { FrontLedTilt, KnotTilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { frontLedSentence, strayText } from '$src/report/frontLedWords';
import { inventedPlan } from './inventedRecord';

const drawn = (seconds: number): KnotTilt => ({
  kind: 'drawn',
  start: fromDegrees(30),
  limits: WIDEST_LIMITS,
  knots: [{ time: seconds, inclination: fromDegrees(-90) }],
  origin: '',
});
/** Critical speed of the invented plan is 0.5 m/s, so 0.2 m/s are wished. */
const asked: FrontLedTilt = {
  kind: 'front-led',
  start: fromDegrees(30),
  end: fromDegrees(-90),
  limits: WIDEST_LIMITS,
  share: 0.4,
  homeWithin: null,
};
const one: FrontLedTry = {
  tilt: drawn(6),
  wished: 0.2,
  peakFrontSpeed: 0.21,
  homeTime: 1.4,
  lap: 'none',
  folds: 2,
  place: new Float64Array(),
  speed: new Float64Array(),
};
const HALF_FULL = volumeFromFillLevel(inventedPlan.section, asked.start, -0.02)!;
const saidOf = (
  change: Partial<FrontLedTry>,
  tilt: Partial<FrontLedTilt> = {},
  volume: number = HALF_FULL,
) => {
  const plan: PourPlan = { ...inventedPlan, volume, tilt: { ...asked, ...tilt } };
  return frontLedSentence(
    {
      tries: [
        { ...one, peakFrontSpeed: 0.4 },
        { ...one, ...change },
      ],
      chosen: 1,
    },
    plan,
  );
};

describe('how a front-led tilt was found, in words', () => {
  it('a peak near the wish is told and nothing more', () => {
    expect(saidOf({})).toBe(
      'Wanted 0.20 m/s: the front peaks at 0.40 m/s as the level fill has it, at 0.21 m/s after one correction. Folds: 2 before, 2 after.',
    );
  });

  it('a peak a tenth over it is not reached, with what lowers it', () => {
    expect(saidOf({ peakFrontSpeed: 0.219 })).not.toContain('not reached');
    const said = saidOf({ peakFrontSpeed: 0.25 });
    expect(said).toContain('The wish is not reached with this basin: the front runs 25 % over it.');
    expect(said).toMatch(/fuller basin, or a shorter one for the same weight/);
    const brimful = saidOf({ peakFrontSpeed: 0.25 }, {}, inventedPlan.volume);
    expect(brimful).toMatch(/full to the brink already/);
    expect(brimful).not.toContain('fuller basin');
    expect(said).not.toContain('slowest');
  });

  it('a machine that turns at its slowest on the way is named too', () => {
    const slow = { ...drawn(6), limits: { ...WIDEST_LIMITS, slowest: fromDegrees(20) } };
    expect(saidOf({ peakFrontSpeed: 0.25, tilt: slow })).toContain('already turns at its slowest');
  });

  it('speaks of hurry only where a time was asked for', () => {
    expect(saidOf({ wished: 0.3 })).not.toContain('hurried to');
    expect(saidOf({ wished: 0.3 }, { homeWithin: 1.5 })).toContain(
      'hurried to 0.30 m/s so as to be at the die end in time',
    );
    expect(saidOf({ lap: 'laps' })).toContain(
      'cold enough to lap: ask for it at the die end in time, and it is hurried',
    );
    expect(saidOf({ lap: 'laps' }, { homeWithin: 1.5 })).toContain('It is still cold enough to lap.');
  });

  it('stages are told with how far they stray and what to do', () => {
    const tilt = drawn(6);
    expect(strayText(tilt, asStages(tilt))).toMatch(
      /^They stray from it by \d\.\d° at most\. Run the pour with them/,
    );
  });
});
