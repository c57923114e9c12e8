import { describe, expect, it } from 'vitest';
import { reachTime } from '$src/core/fit/reachTime';
import { driveOf, withMasses, withOpening } from '$src/core/fit/settings';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';
import { machineMotion } from '$src/core/tilt/machine/machineMotion';
import { fromDegrees } from '$src/core/units';

const turn = { start: fromDegrees(0), end: fromDegrees(-90) };
const VALVE = { valve: true, weights: [] };
const ALL = { valve: true, weights: [0] };
const timeOf = (machine: Machine): number => machineMotion({ ...turn, machine }).motion.duration;

describe('settings for a wanted time', () => {
  it('turns the valve alone, to steps of a shop, and takes the time that was asked for', () => {
    for (const wanted of [4, 9, 15]) {
      const { machine, settings, time, isReached } = reachTime({
        ...turn,
        machine: BENCH_MACHINE,
        wanted,
        changeable: VALVE,
      });
      expect(machine.weights).toEqual(BENCH_MACHINE.weights);
      expect(isReached).toBe(true);
      expect(time).toBe(timeOf(machine));
      expect(Math.abs(time! - wanted)).toBeLessThan(0.04 * wanted);
      const steps = settings[0]!.value * 100;
      expect(steps).toBeCloseTo(Math.round(steps), 6);
      expect(settings).toHaveLength(1);
    }
  });

  it('leaves the weights alone where the valve does it, though they may change', () => {
    const asked = { ...turn, machine: BENCH_MACHINE, wanted: 9 };
    const { machine, settings } = reachTime({ ...asked, changeable: ALL });
    expect(machine).toEqual(reachTime({ ...asked, changeable: VALVE }).machine);
    expect(settings[1]).toMatchObject({ before: 10, value: 10 });
  });

  it('says what is out of reach of the valve, and takes no more weight than that takes', () => {
    const wideOpen = timeOf(withOpening(BENCH_MACHINE, 5));
    const asked = { ...turn, machine: BENCH_MACHINE, wanted: 0.7 * wideOpen };
    const alone = reachTime({ ...asked, changeable: VALVE });
    expect(alone.isReached).toBe(false);
    expect(alone.settings[0]).toMatchObject({ value: 5, isAtEdge: true });
    const both = reachTime({ ...asked, changeable: ALL });
    expect(both.isReached).toBe(true);
    expect(both.machine.weights[0]!.mass).toBeGreaterThan(10);
    expect(driveOf({ ...turn, machine: both.machine })).toBeGreaterThan(
      driveOf({ ...turn, machine: BENCH_MACHINE }),
    );
    const aKilogramLess = withMasses(both.machine, [0], [both.machine.weights[0]!.mass - 1]);
    expect(timeOf(aKilogramLess)).toBeGreaterThan(both.time!);
  });

  it('takes weight off the driving side, and adds it on the other, where the fall is to be slower', () => {
    const counter = { mass: 2, radius: 0.3, angle: fromDegrees(180) };
    const machine = { ...BENCH_MACHINE, weights: [...BENCH_MACHINE.weights, counter] };
    const slower = 1.3 * timeOf(machine);
    const changeable = { valve: false, weights: [0, 1] };
    const reached = reachTime({ ...turn, machine, wanted: slower, changeable });
    expect(reached.isReached).toBe(true);
    expect(reached.machine.valve).toEqual(machine.valve);
    expect(reached.machine.weights[0]!.mass).toBeLessThan(10);
    expect(reached.machine.weights[1]!.mass).toBeGreaterThan(2);
  });

  it('is nearer only where it gains more than a watch shows, with weights that a shop has', () => {
    const wideOpen = withOpening(BENCH_MACHINE, 5);
    const wanted = 0.7 * timeOf(wideOpen);
    expect(reachTime({ ...turn, machine: BENCH_MACHINE, wanted, changeable: VALVE }).isNearer).toBe(true);
    // Wide open already, the valve has no more to give; so has no weight that a shop can lift.
    const spent = reachTime({ ...turn, machine: wideOpen, wanted, changeable: VALVE });
    expect([spent.isReached, spent.isNearer]).toEqual([false, false]);
    expect(spent.timeBefore).toBe(timeOf(wideOpen));
    const heavy = reachTime({ ...turn, machine: wideOpen, wanted: 0.2, changeable: ALL });
    expect([heavy.isReached, heavy.isNearer]).toEqual([false, false]);
    expect(heavy.settings[1]).toMatchObject({ value: 200, isAtEdge: true });
  });

  it('leaves a machine as it is that may not be changed', () => {
    const changeable = { valve: false, weights: [] };
    const { machine, settings } = reachTime({ ...turn, machine: BENCH_MACHINE, wanted: 9, changeable });
    expect(machine).toEqual(BENCH_MACHINE);
    expect(settings).toEqual([]);
  });
});
