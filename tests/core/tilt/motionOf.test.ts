import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { motionOf } from '$src/core/tilt/motionOf';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { feasibleTilts } from './tilts';

/** Kinematics only: position is the integral of the rate (any mechanics text); no published table is needed. */

const steady = (smoothing: number): Tilt => ({
  kind: 'steady',
  start: fromDegrees(30),
  end: fromDegrees(-90),
  rate: fromDegrees(15),
  smoothing,
  limits: WIDEST_LIMITS,
});

describe('motion of a steady tilt', () => {
  it('takes the turn over the rate plus one smoothing', () => {
    expect(motionOf(steady(0)).duration).toBeCloseTo(8, 12);
    expect(motionOf(steady(0.5)).duration).toBeCloseTo(8.5, 12);
  });

  it('starts and stops abruptly without smoothing', () => {
    const motion = motionOf(steady(0));
    expect(motion.rateAt(0)).toBeCloseTo(fromDegrees(-15), 14);
    expect(motion.rateAt(8)).toBe(0);
    expect(motion.accelerationAt(4)).toBe(0);
    expect(motion.inclinationAt(2)).toBeCloseTo(0, 14);
  });

  it('comes up from rest over the smoothing', () => {
    const motion = motionOf(steady(0.5));
    expect(motion.rateAt(0)).toBeCloseTo(0, 14);
    expect(motion.rateAt(0.25)).toBeCloseTo(fromDegrees(-7.5), 12);
    expect(motion.accelerationAt(0.1)).toBeCloseTo(fromDegrees(-30), 12);
    expect(motion.inclinationAt(0.5)).toBeCloseTo(fromDegrees(30 - 3.75), 12);
    expect(motion.accelerationAt(8.3)).toBeCloseTo(fromDegrees(30), 12);
  });

  it('stands still before and after', () => {
    const motion = motionOf(steady(0.5));
    expect([motion.inclinationAt(-1), motion.rateAt(-1)]).toEqual([motion.start, 0]);
    expect([motion.inclinationAt(99), motion.rateAt(99), motion.accelerationAt(99)]).toEqual([
      motion.end,
      0,
      0,
    ]);
  });
});

describe('motion of a staged tilt', () => {
  const staged: Tilt = {
    kind: 'staged',
    start: fromDegrees(30),
    smoothing: 0.4,
    limits: WIDEST_LIMITS,
    stages: [
      { to: fromDegrees(0), time: 6 },
      { to: fromDegrees(-90), rate: fromDegrees(30) },
    ],
  };

  it('gives a timed stage exactly its time', () => {
    expect(motionOf(staged).duration).toBeCloseTo(6 + 3 + 0.2, 12);
  });

  it('passes an interior knot off by the change of rate times an eighth of the smoothing', () => {
    const change = fromDegrees(30) - fromDegrees(30) / 5.8;
    expect(motionOf(staged).inclinationAt(6)).toBeCloseTo(-(change * 0.4) / 8, 12);
  });
});

describe('any tilt the machine can do', () => {
  const runs = { numRuns: 150, seed: 20261 };

  it('ends exactly where it should, at rest', () => {
    fc.assert(
      fc.property(feasibleTilts, (tilt) => {
        const motion = motionOf(tilt);
        const justBefore = motion.inclinationAt(motion.duration * (1 - 1e-15));
        expect(motion.inclinationAt(motion.duration)).toBe(motion.end);
        expect(Math.abs(justBefore - motion.end)).toBeLessThan(1e-12);
      }),
      runs,
    );
  });

  it('has an inclination without jumps that only falls', () => {
    fc.assert(
      fc.property(feasibleTilts, (tilt) => {
        const motion = motionOf(tilt);
        const step = motion.duration / 1000;
        const falls = Array.from(
          { length: 1000 },
          (_, i) => motion.inclinationAt(i * step) - motion.inclinationAt((i + 1) * step),
        );
        // All at once: 300 000 questions to the test runner take longer than the tilts themselves.
        expect(Math.min(...falls)).toBeGreaterThan(-1e-13);
        expect(Math.max(...falls)).toBeLessThanOrEqual(tilt.limits.quickest * step * (1 + 1e-9) + 1e-12);
      }),
      runs,
    );
  });

  it('has a rate that is the derivative of the inclination, and an acceleration that is that of the rate', () => {
    fc.assert(
      fc.property(feasibleTilts, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (tilt, share) => {
        const motion = motionOf(tilt);
        const time = share * motion.duration;
        const step = 1e-6;
        const slope = (motion.inclinationAt(time + step) - motion.inclinationAt(time - step)) / (2 * step);
        const kink = motion.rateAt(time + step) - motion.rateAt(time - step);
        // Over a jump of rate (no smoothing) the central difference is only good to the jump itself.
        expect(Math.abs(slope - motion.rateAt(time))).toBeLessThan(1e-8 + Math.abs(kink));
        const bend = motion.accelerationAt(time + step) - motion.accelerationAt(time - step);
        if (bend === 0) expect(Math.abs(kink / (2 * step) - motion.accelerationAt(time))).toBeLessThan(1e-6);
      }),
      runs,
    );
  });

  it('turns by the integral of its rate', () => {
    fc.assert(
      fc.property(feasibleTilts, (tilt) => {
        const motion = motionOf(tilt);
        const count = 4000;
        const step = motion.duration / count;
        let turned = 0;
        for (let i = 0; i < count; i++) turned += motion.rateAt((i + 0.5) * step) * step;
        // The midpoint rule misses at most a step at each kink or jump of the rate.
        const miss = step * tilt.limits.quickest * 60;
        expect(Math.abs(turned - (motion.end - motion.start))).toBeLessThan(Math.min(miss, 0.02));
      }),
      runs,
    );
  });
});
