import { describe, expect, it } from 'vitest';
import { type Fit, fitMachine } from '$src/core/fit/fitMachine';
import { type UnknownId, USUAL } from '$src/core/fit/unknowns';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { fromDegrees, toDegrees } from '$src/core/units';
import { changed, opened, readingsOf } from './invented';

const TRUTH = { 'valve.length': 0.02, 'bearing.friction': 0.18 } as const;

function fitted(
  open: number,
  noise: number,
  seed: number,
  truth: Partial<Record<UnknownId, number>> = TRUTH,
): Fit {
  const machine = opened(open);
  const { start, knots, readings } = readingsOf(changed(machine, truth), noise, seed);
  return fitMachine({ machine, measured: { start, knots, readings }, unknowns: USUAL });
}

/** How many of its deviations each value is off. */
const strays = (fit: Fit, truth: Partial<Record<UnknownId, number>>): number[] =>
  fit.values.map(({ id, value, deviation }) => Math.abs(value - truth[id]!) / deviation);

describe('how sure a fit is', () => {
  const all = [1.5, 3].flatMap((open) =>
    Array.from({ length: 24 }, (_, seed) => strays(fitted(open, 0.15, seed + 1), TRUTH)).flat(),
  );
  const within = (times: number) => all.filter((stray) => stray <= times).length / all.length;

  it('over 48 noisy tilts the truth lies within twice the ± as often as it is due, 95 in 100', () => {
    expect(within(2)).toBeGreaterThanOrEqual(0.9);
    expect(within(2)).toBeLessThanOrEqual(0.99);
  });

  it('and within once the ± about 68 times in 100: it is not merely wide', () => {
    expect(within(1)).toBeGreaterThan(0.55);
    expect(within(1)).toBeLessThan(0.85);
  });
});

describe('a fit that would end in a hollow from one start', () => {
  it.each([1, 2, 3])('finds a quick tilt in the worst noise, %d', (seed) => {
    const fit = fitted(3, 0.4, seed);
    expect(toDegrees(fit.residual)).toBeLessThan(0.4);
    for (const { isAtEdge } of fit.values) expect(isAtEdge).toBe(false);
    for (const stray of strays(fit, TRUTH)) expect(stray).toBeLessThan(3);
  });

  it('finds values that are eight and four times those given', () => {
    const truth = { 'valve.length': 0.1, 'bearing.friction': 0.4 };
    const fit = fitted(1.5, 0.15, 4, truth);
    for (const stray of strays(fit, truth)) expect(stray).toBeLessThan(3);
    expect(fit.isOff).toBe(false);
  });
});

describe('a machine that is not the one measured', () => {
  it('is said to be off: no valve makes up for a weight on the other side', () => {
    const { parts, weights } = BENCH_MACHINE;
    const heavy = { ...opened(1.5), weights: [{ ...weights[0]!, mass: 40, angle: fromDegrees(70) }] };
    const { start, knots, readings } = readingsOf(heavy, 0.1);
    const machine = { ...opened(1.5), parts };
    const fit = fitMachine({ machine, measured: { start, knots, readings }, unknowns: USUAL });
    expect(toDegrees(fit.residual)).toBeGreaterThan(0.3);
    expect(fit.isOff).toBe(true);
  });
});

it('without what is known of the readings the ± is no smaller', () => {
  const machine = opened(1.5);
  const { start, knots, readings } = readingsOf(changed(machine, TRUTH), 0.15, 5);
  const [known, unknown] = [
    { start, knots, readings },
    { start, knots },
  ].map((measured) => fitMachine({ machine, measured, unknowns: USUAL }));
  known!.values.forEach(({ deviation }, k) => {
    expect(unknown!.values[k]!.deviation).toBeGreaterThan(deviation);
  });
});
