import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { FrontLedTilt, KnotTilt, MachineTilt } from '$src/core/tilt/tilt';
import { fromDegrees, toDegrees } from '$src/core/units';

const limits = {
  highestStart: fromDegrees(20),
  lowestEnd: fromDegrees(-80),
  slowest: fromDegrees(2),
  quickest: fromDegrees(40),
};
const knotTilt = (
  kind: KnotTilt['kind'],
  rows: readonly (readonly [time: number, degrees: number])[],
  start = 30,
): KnotTilt => ({
  kind,
  start: fromDegrees(start),
  limits,
  knots: rows.map(([time, degrees]) => ({ time, inclination: fromDegrees(degrees) })),
  origin: '',
});
/** Knots of the tilt that is offered, in seconds and degrees. */
function offeredKnots(tilt: KnotTilt): [number, number][] {
  const { nearest } = checkTilt(tilt);
  if (nearest?.kind !== 'drawn') throw new Error(`Offered: ${nearest?.kind}.`);
  return nearest.knots.map(({ time, inclination }) => [time, toDegrees(inclination)]);
}

describe('the nearest to a drawn tilt', () => {
  it('brings inclinations inside the limits and leaves times alone that the machine can keep', () => {
    const tilt = knotTilt('drawn', [
      [3, 10],
      [8, -60],
      [11, -95],
    ]);
    const { issues, nearest } = checkTilt(tilt);
    expect(issues.map(({ path }) => path)).toEqual(['start', 'knots.2.inclination']);
    expect(toDegrees(nearest!.start)).toBeCloseTo(20, 9);
    const knots = offeredKnots(tilt);
    expect(knots.map(([time]) => time)).toEqual([3, 8, 11]);
    [10, -60, -80].forEach((degrees, i) => {
      expect(knots[i]![1]).toBeCloseTo(degrees, 9);
    });
  });

  it('lengthens what is too quick until its quickest instant is the limit, and no further than it must', () => {
    const tilt = knotTilt('drawn', [[1, -70]], 20);
    const offered = checkTilt(tilt).nearest!;
    const { duration, rateAt } = motionOf(offered);
    // One cubic from rest to rest turns at most one and a half times its mean.
    expect(duration).toBeCloseTo((1.5 * 90) / 40, 6);
    expect(toDegrees(Math.abs(rateAt(duration / 2)))).toBeCloseTo(40, 6);
  });

  it('shortens what creeps to the slowest rate, but leaves a pause', () => {
    const tilt = knotTilt(
      'drawn',
      [
        [4, 0],
        [24, -10],
        [30, -10],
        [36, -70],
      ],
      20,
    );
    expect(checkTilt(tilt).issues.map(({ path }) => path)).toEqual(['knots.1.time']);
    const knots = offeredKnots(tilt);
    expect(knots[1]![0] - knots[0]![0]).toBeCloseTo(5, 9);
    expect(knots[2]![0] - knots[1]![0]).toBeCloseTo(6, 9);
  });

  it('lets a knot fall that turns back up, and puts one later that was typed too early', () => {
    const tilt = knotTilt(
      'drawn',
      [
        [2, 0],
        [4, 5],
        [3, -20],
        [8, -70],
      ],
      20,
    );
    const knots = offeredKnots(tilt);
    expect(knots[1]![1]).toBeCloseTo(0, 9);
    expect(knots[2]![0]).toBeGreaterThan(knots[1]![0]);
  });

  it('is told in stages where slowest and quickest leave no room for a curve from rest to rest', () => {
    const tight = { ...limits, slowest: fromDegrees(10), quickest: fromDegrees(11) };
    const { nearest } = checkTilt({ ...knotTilt('drawn', [[20, -70]], 20), limits: tight });
    expect(nearest!.kind).toBe('staged');
    expect(checkTilt(nearest!).issues).toEqual([]);
  });

  it('is one the machine can do, whatever was drawn or measured', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const any = fc.record({
      kind: fc.constantFrom('drawn' as const, 'measured' as const),
      start: number(-200, 200),
      rows: fc.array(fc.tuple(number(-1, 60), number(-200, 200)), { minLength: 1, maxLength: 12 }),
      limits: fc.record({
        highestStart: number(0, 1.4),
        lowestEnd: number(-1.8, -0.1),
        slowest: number(0, 0.3),
        quickest: number(0.4, 3),
      }),
    });
    fc.assert(
      fc.property(any, ({ kind, start, rows, limits: own }) => {
        const { issues, nearest } = checkTilt({ ...knotTilt(kind, rows, start), limits: own });
        if (issues.length === 0) return;
        if (kind === 'drawn') expect(nearest).not.toBeNull();
        if (nearest === null) return;
        expect(checkTilt(nearest).issues).toEqual([]);
        expect(motionOf(nearest).duration).toBeGreaterThan(0);
      }),
      { numRuns: 500, seed: 20267 },
    );
  });

  it('a measured tilt that the model all but reaches is offered as a drawn one', () => {
    const measured = { ...knotTilt('measured', [[8, -102]]), limits: WIDEST_LIMITS };
    const { issues, nearest } = checkTilt(measured);
    expect(issues.length).toBeGreaterThan(0);
    expect(nearest!.kind).toBe('drawn');
    expect(toDegrees(motionOf(nearest!).end)).toBeCloseTo(-100, 9);
  });

  it('readings far out of reach are offered no other tilt: the remedy tells which start brings them within', () => {
    const measured = { ...knotTilt('measured', [[8, -120]], 0), limits: WIDEST_LIMITS };
    const { issues, nearest } = checkTilt(measured);
    expect(nearest).toBeNull();
    expect(issues[0]!.remedy).toContain('With a start of 20° to 75° all lie within.');
    for (const start of [20, 75])
      expect(
        checkTilt({ ...knotTilt('measured', [[8, start - 120]], start), limits: WIDEST_LIMITS }).issues,
      ).toEqual([]);
    const wide = checkTilt({ ...knotTilt('measured', [[8, -120]], 70), limits: WIDEST_LIMITS });
    expect(wide.issues[0]!.remedy).toContain('They span 190°, more than that: no zero mends it.');
    expect(wide.nearest).toBeNull();
  });

  it('numbers that are none have no nearest', () => {
    expect(checkTilt(knotTilt('drawn', [[1, Number.NaN]])).nearest).toBeNull();
  });
});

describe('the nearest of the tilts that are not drawn', () => {
  const machine: MachineTilt = {
    kind: 'machine',
    start: fromDegrees(30),
    end: fromDegrees(-95),
    limits,
    machine: BENCH_MACHINE,
  };
  const led: FrontLedTilt = {
    kind: 'front-led',
    start: fromDegrees(30),
    end: fromDegrees(-95),
    limits,
    share: 4,
    homeWithin: 0.01,
  };

  it('a machine has its stops moved, which the words name', () => {
    const { issues, nearest } = checkTilt(machine);
    expect(issues.map(({ path }) => path)).toEqual(['start', 'end']);
    expect(issues[0]!.remedy).toContain('stop');
    expect(issues[1]!.remedy).toContain('−80°');
    expect(nearest).toEqual({ ...machine, start: limits.highestStart, end: limits.lowestEnd });
  });

  it('no stop mends a machine that is wrong in itself', () => {
    const oilVolume = -1;
    expect(checkTilt({ ...machine, machine: { ...BENCH_MACHINE, oilVolume } }).nearest).toBeNull();
  });

  it('a front-led tilt starts, ends and asks within the limits', () => {
    const { nearest } = checkTilt(led);
    expect(nearest).toEqual({
      ...led,
      start: limits.highestStart,
      end: limits.lowestEnd,
      share: 1,
      homeWithin: 0.2,
    });
    expect(checkTilt(nearest!).issues).toEqual([]);
  });

  it('good ones are offered nothing', () => {
    const good = { ...machine, start: 0, end: fromDegrees(-80), limits: WIDEST_LIMITS };
    expect(checkTilt(good)).toEqual({ issues: [], nearest: null });
  });
});
