import { describe, expect, it } from 'vitest';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { makeBody } from '$src/core/tilt/machine/body';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';
import { wayBackWarnings } from '$src/core/tilt/machine/machineWarnings';
import { wayBack } from '$src/core/tilt/machine/wayBack';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { MachineTilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';

const tiltOf = (machine: Machine, quickest = WIDEST_LIMITS.quickest): MachineTilt => ({
  kind: 'machine',
  start: fromDegrees(30),
  end: fromDegrees(-90),
  limits: { ...WIDEST_LIMITS, quickest },
  machine,
});
const kinds = (tilt: MachineTilt) => wayBackWarnings(tilt, wayBack(tilt)).map(({ kind }) => kind);

describe('the way back', () => {
  /** A body balanced about its pivot, without friction or cushion: a steady torque turns it evenly quicker. */
  it('of a balanced body takes √(2 turn inertia / torque), in closed form', () => {
    const part = { name: 'die', mass: 40, at: { x: 0, y: 0 }, gyration: 0.3 };
    const balanced: Machine = {
      ...BENCH_MACHINE,
      parts: [part],
      weights: [],
      bearing: { radius: 0, friction: 0 },
      cushion: { over: 0, damping: 0 },
      returnTorque: 3,
    };
    const { inertia } = makeBody(balanced, 0);
    const exact = Math.sqrt((2 * fromDegrees(120) * inertia) / 3);
    // Found in steps of 5 ms.
    expect(Math.abs(wayBack(tiltOf(balanced)).time! - exact)).toBeLessThan(0.006);
  });

  it('takes longer with a lower quickest rate, and never less than the turn at that rate', () => {
    const slow = wayBack(tiltOf(BENCH_MACHINE, fromDegrees(30))).time!;
    expect(slow).toBeGreaterThan(120 / 30);
    expect(slow).toBeLessThan(1.3 * (120 / 30));
    expect(wayBack(tiltOf(BENCH_MACHINE)).time!).toBeLessThan(slow);
  });

  it('a one-way return lets the damper go; without it the damper holds, and presses', () => {
    const free = wayBack(tiltOf(BENCH_MACHINE));
    const held = wayBack(tiltOf({ ...BENCH_MACHINE, oneWayReturn: false }));
    expect(free.highestPressure).toBe(0);
    expect(held.highestPressure).toBeGreaterThan(0);
    expect(held.time!).toBeGreaterThan(1.5 * free.time!);
  });

  it('needs what weights and bearing take at most; less does not bring it back, and that is said', () => {
    const { needed, torque, time } = wayBack(tiltOf(BENCH_MACHINE));
    expect(torque).toBeCloseTo(1.25 * needed, 9);
    expect(time).not.toBeNull();
    const weak = tiltOf({ ...BENCH_MACHINE, returnTorque: 0.5 * needed });
    expect(wayBack(weak).time).toBeNull();
    expect(kinds(weak)).toEqual(['does not come back']);
    expect(kinds(tiltOf(BENCH_MACHINE))).toEqual([]);
  });

  it('warns of pressure when it is torn back against the damper', () => {
    const torn = { ...BENCH_MACHINE, oneWayReturn: false, returnTorque: 5000 };
    expect(kinds(tiltOf(torn))).toContain('pressure too high on the way back');
  });

  it('a torque that is none is refused by name', () => {
    const { issues } = checkTilt(tiltOf({ ...BENCH_MACHINE, returnTorque: 0 }));
    expect(issues.map(({ path }) => path)).toEqual(['machine.returnTorque']);
  });
});
