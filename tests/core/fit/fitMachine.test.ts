import { describe, expect, it } from 'vitest';
import { fitMachine } from '$src/core/fit/fitMachine';
import { quickTilt } from '$src/core/fit/quickTilt';
import { NEAR, reachProfile } from '$src/core/fit/reachProfile';
import { withMasses, withOpening } from '$src/core/fit/settings';
import { type UnknownId, USUAL } from '$src/core/fit/unknowns';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';
import { machineMotion } from '$src/core/tilt/machine/machineMotion';
import type { Knot } from '$src/core/tilt/tilt';
import { fromDegrees, toDegrees } from '$src/core/units';
import { changed, END as end, opened, readingsOf, START as start } from './invented';

const TRUTH = { 'valve.length': 0.02, 'bearing.friction': 0.18 } as const;

describe('a machine fitted to a noisy tilt of itself', () => {
  const guess = opened(0.5);
  const fit = fitMachine({
    machine: guess,
    measured: readingsOf(changed(guess, TRUTH), 0.15),
    unknowns: USUAL,
  });

  it.each(['valve.length', 'bearing.friction'] as const)('finds %s within three deviations', (id) => {
    const found = fit.values.find((one) => one.id === id)!;
    expect(found.isAtEdge).toBe(false);
    expect(found.deviation).toBeGreaterThan(0);
    expect(Math.abs(found.value - TRUTH[id])).toBeLessThan(3 * found.deviation);
  });

  it('finds the passage to 5 %, and comes as near as the readings scatter', () => {
    const passage = fit.values.find(({ id }) => id === 'valve.length')!;
    expect(Math.abs(passage.value / TRUTH['valve.length'] - 1)).toBeLessThan(0.05);
    expect(toDegrees(fit.residual)).toBeLessThan(0.5);
    expect(fit.residual).toBeLessThan(fit.residualBefore / 10);
  });

  it('says so when a tilt does not decide what is asked of it', () => {
    const all = fitMachine({
      machine: guess,
      measured: readingsOf(changed(guess, TRUTH), 0.15),
      unknowns: ['valve.length', 'valve.coefficient', 'bearing.friction'],
    });
    const deviation = (of: typeof fit, id: UnknownId) => of.values.find((one) => one.id === id)!.deviation;
    expect(deviation(all, 'valve.length')).toBeGreaterThan(4 * deviation(fit, 'valve.length'));
  });

  it('in long steps the machine strays by less than readings do', () => {
    const { motion } = machineMotion({ start, end, machine: guess });
    const quick = quickTilt({ start, end, machine: guess });
    for (let t = 0; t < motion.duration; t += 0.05)
      expect(Math.abs(toDegrees(quick.inclinationAt(t) - motion.inclinationAt(t)))).toBeLessThan(0.05);
  });
});

const VALVE = { valve: true, weights: [] };
const ALL = { valve: true, weights: [0] };

describe('settings that come closest to a wanted tilt', () => {
  /** A tilt as the bench machine makes it at some opening. */
  function wantedOf(machine: Machine): Knot[] {
    const { motion } = machineMotion({ start, end, machine });
    return Array.from({ length: 101 }, (_, i) => {
      const time = (motion.duration * i) / 100;
      return { time, inclination: motion.inclinationAt(time) };
    });
  }

  it('finds the opening of a tilt the machine can make', () => {
    const reach = reachProfile({ machine: opened(3), wanted: wantedOf(opened(0.8)), changeable: VALVE });
    expect(reach.missed).toEqual([]);
    expect(toDegrees(reach.worst)).toBeLessThan(0.5);
    expect(reach.settings).toEqual([{ setting: 'valve', index: 0, before: 3, value: 0.8, isAtEdge: false }]);
    expect(reach.machine.weights).toEqual(BENCH_MACHINE.weights);
  });

  it('leaves the weights as they are where the valve alone does it, though they may change', () => {
    const reach = reachProfile({ machine: opened(3), wanted: wantedOf(opened(0.8)), changeable: ALL });
    expect(reach.machine).toEqual(opened(0.8));
    expect(reach.settings.map(({ before, value }) => value - before)[1]).toBe(0);
  });

  it('changes the weights that may change where the valve does not do it, in steps a shop can weigh', () => {
    const heavy = withMasses(BENCH_MACHINE, [0], [40]);
    const wanted = wantedOf(withOpening(heavy, 5));
    const alone = reachProfile({ machine: BENCH_MACHINE, wanted, changeable: VALVE });
    const both = reachProfile({ machine: BENCH_MACHINE, wanted, changeable: ALL });
    expect(alone.machine.weights).toEqual(BENCH_MACHINE.weights);
    expect(alone.worst).toBeGreaterThan(NEAR);
    expect(both.worst).toBeLessThan(0.5 * alone.worst);
    const { mass } = both.machine.weights[0]!;
    expect(mass).toBeGreaterThan(10);
    expect(mass * 10).toBeCloseTo(Math.round(mass * 10), 6);
  });

  it('comes closer where it counts when the rest of the tilt does not', () => {
    // Slow at first, and from 3 s on a drop that no damper set for the beginning makes.
    const wanted: Knot[] = [
      { time: 0, inclination: start },
      { time: 3, inclination: start - fromDegrees(12) },
      { time: 3.6, inclination: end },
    ];
    const whole = reachProfile({
      machine: BENCH_MACHINE,
      wanted,
      changeable: ALL,
    });
    const early = reachProfile({ machine: BENCH_MACHINE, wanted, changeable: ALL, until: 3 });
    const stray = (curve: readonly Knot[]): number =>
      Math.max(
        ...curve
          .filter(({ time }) => time <= 3)
          .map(({ time, inclination }) => Math.abs(inclination - (start - (fromDegrees(12) * time) / 3))),
      );
    expect(stray(early.curve)).toBeLessThan(0.5 * stray(whole.curve));
    expect(early.worstTime).toBeLessThanOrEqual(3);
    expect(early.curve.at(-1)!.time).toBeGreaterThan(3.6);
  });

  it('marks what it cannot reach: a pause half way, which a falling body does not make', () => {
    const wanted: Knot[] = [
      { time: 0, inclination: start },
      { time: 2, inclination: fromDegrees(-5) },
      { time: 5, inclination: fromDegrees(-8) },
      { time: 7, inclination: end },
    ];
    const { missed, worst, worstTime, residual, curve } = reachProfile({
      machine: BENCH_MACHINE,
      wanted,
      changeable: ALL,
    });
    expect(worst).toBeGreaterThan(2 * NEAR);
    expect(missed.some(({ from, to }) => from <= worstTime && worstTime <= to)).toBe(true);
    expect(residual).toBeLessThan(worst);
    expect(curve.at(-1)!.inclination).toBeLessThan(fromDegrees(-80));
  });
});
