import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { motionOf } from '$src/core/tilt/motionOf';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { anyTilts, feasibleTilts } from './tilts';

type Steady = Extract<Tilt, { kind: 'steady' }>;
type Staged = Extract<Tilt, { kind: 'staged' }>;

const limits = WIDEST_LIMITS;
const good: Steady = {
  kind: 'steady',
  start: fromDegrees(30),
  end: fromDegrees(-90),
  rate: fromDegrees(15),
  smoothing: 0.3,
  limits,
};
const staged: Staged = {
  kind: 'staged',
  start: fromDegrees(30),
  smoothing: 0.3,
  limits,
  stages: [
    { to: fromDegrees(5), rate: fromDegrees(8) },
    { to: fromDegrees(-90), time: 4 },
  ],
};
const paths = (tilt: Tilt): string[] => checkTilt(tilt).issues.map((issue) => issue.path);

describe('checkTilt', () => {
  it('lets a feasible tilt pass and offers nothing', () => {
    expect(checkTilt(good)).toEqual({ issues: [], nearest: null });
    expect(checkTilt(staged)).toEqual({ issues: [], nearest: null });
  });

  it.each([
    ['a start above the range', { ...good, start: fromDegrees(76), limits: WIDEST_LIMITS }, 'start'],
    ['an end below the range', { ...good, end: fromDegrees(-101), limits: WIDEST_LIMITS }, 'end'],
    ['a rate under 1° a second', { ...good, rate: fromDegrees(0.5) }, 'rate'],
    ['a rate over 120° a second', { ...good, rate: fromDegrees(121) }, 'rate'],
    ['no turn', { ...good, end: good.start }, 'end'],
    ['smoothing longer than the turn', { ...good, smoothing: 9 }, 'smoothing'],
    ['a number that is none', { ...good, rate: Number.NaN }, 'rate'],
    ['no stage', { ...staged, stages: [] }, 'stages'],
    ['a stage that rises', { ...staged, stages: [...staged.stages, { to: 0, time: 2 }] }, 'stages.2.to'],
    [
      'a stage too quick for its time',
      { ...staged, stages: [staged.stages[0]!, { to: fromDegrees(-90), time: 0.5 }] },
      'stages.1.time',
    ],
  ] satisfies [string, Tilt, string][])('refuses %s', (_, tilt, path) => {
    expect(paths(tilt)).toEqual([path]);
  });

  it('takes the whole range of the model, +75° to −100°', () => {
    expect(paths({ ...good, start: fromDegrees(75), end: fromDegrees(-100), limits: WIDEST_LIMITS })).toEqual(
      [],
    );
  });

  it('takes the limits of the machine when they are narrower', () => {
    const level: Steady = { ...good, limits: { ...limits, highestStart: 0, quickest: fromDegrees(10) } };
    expect(paths(level)).toEqual(['start', 'rate']);
    expect(checkTilt(level).nearest).toEqual({ ...level, start: 0, rate: fromDegrees(10) });
  });

  it('never trusts machine limits wider than the model', () => {
    const wide = { ...limits, highestStart: fromDegrees(180), quickest: fromDegrees(1000) };
    expect(paths({ ...good, limits: wide, start: fromDegrees(80), rate: fromDegrees(500) })).toEqual([
      'start',
      'rate',
    ]);
  });

  it('says so when the limits themselves leave no room', () => {
    const check = checkTilt({ ...good, limits: { ...limits, highestStart: fromDegrees(-105) } });
    expect(check.issues.map((issue) => issue.path)).toEqual(['limits.highestStart']);
    expect(check.nearest).toBeNull();
  });

  it('names the rate range for a timed stage as times', () => {
    const [issue] = checkTilt({ ...staged, stages: [{ to: fromDegrees(-90), time: 200 }] }).issues;
    expect(issue!.remedy).toBe('Give 1.3 s to 120 s.');
  });

  it('turns start and end about when they were swapped', () => {
    const swapped: Steady = { ...good, start: good.end, end: good.start };
    expect(checkTilt(swapped).nearest).toEqual(good);
  });
});

describe('the nearest tilt', () => {
  const runs = { numRuns: 1000, seed: 20262 };

  it('is feasible whatever was asked, and moves', () => {
    fc.assert(
      fc.property(anyTilts, (tilt) => {
        const { issues, nearest } = checkTilt(tilt);
        if (issues.length === 0) return;
        expect(nearest).not.toBeNull();
        expect(checkTilt(nearest!).issues).toEqual([]);
        expect(motionOf(nearest!).duration).toBeGreaterThan(0);
      }),
      runs,
    );
  });

  it('keeps what was feasible: moving one wrong field leaves the others as they were', () => {
    fc.assert(
      fc.property(feasibleTilts, (tilt) => {
        expect(checkTilt(tilt).issues).toEqual([]);
        const { nearest } = checkTilt({ ...tilt, smoothing: 1e6 });
        expect(nearest!.start).toBe(tilt.start);
      }),
      runs,
    );
  });
});
