import fc from 'fast-check';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { ProgrammedTilt, Stage } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Tilts within the default limits: falling inclinations at least 2° apart, rates in range, room for the smoothing. */
export const feasibleTilts: fc.Arbitrary<ProgrammedTilt> = fc
  .record({
    start: number(-30, 60),
    turns: fc.array(fc.record({ turn: number(2, 14), rate: number(1, 120), timed: fc.boolean() }), {
      minLength: 1,
      maxLength: 4,
    }),
    smoothness: fc.oneof(fc.constant(0), share),
  })
  .map(({ start, turns, smoothness }) => {
    const smoothing = smoothness * Math.min(...turns.map(({ turn, rate }) => turn / rate));
    let to = start;
    const stages = turns.map(({ turn, rate, timed }, index): Stage => {
      to -= turn;
      const ends = (index === 0 ? 1 : 0) + (index === turns.length - 1 ? 1 : 0);
      if (timed) return { to: fromDegrees(to), time: turn / rate + (ends * smoothing) / 2 };
      return { to: fromDegrees(to), rate: fromDegrees(rate) };
    });
    return { kind: 'staged', start: fromDegrees(start), smoothing, limits: WIDEST_LIMITS, stages };
  });

const anyAngle = number(fromDegrees(-200), fromDegrees(200));
const anyStage: fc.Arbitrary<Stage> = fc.oneof(
  fc.record({ to: anyAngle, rate: number(-1, 10) }),
  fc.record({ to: anyAngle, time: number(-1, 200) }),
);
const anyLimits = fc.record({
  highestStart: number(0, 2),
  lowestEnd: number(-3, -0.1),
  slowest: number(0, 0.3),
  quickest: number(0.4, 4),
});
const base = {
  start: anyAngle,
  smoothing: number(-1, 20),
  limits: fc.oneof(fc.constant(WIDEST_LIMITS), anyLimits),
};

/** Tilts of every kind, most of them wrong somewhere; the machine's limits leave room. */
export const anyTilts: fc.Arbitrary<ProgrammedTilt> = fc.oneof(
  fc.record({ ...base, kind: fc.constant('steady' as const), end: anyAngle, rate: number(-1, 10) }),
  fc.record({ ...base, kind: fc.constant('staged' as const), stages: fc.array(anyStage, { maxLength: 60 }) }),
);
