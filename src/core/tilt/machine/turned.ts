import { type Body, frictionLimit, type MetalLoad, weightTorques } from './body';
import { damperState } from './damper';
import type { BodyState } from './stepBody';

/** What one fall of the machine came to, without metal or with it: enough to warn by. */
export interface Turned {
  /** What weights and metal turn it with at the start, + tips it, and what its bearing can hold [N·m]. */
  readonly driving: number;
  readonly held: number;
  /** The same of weights and metal where it is now, + tips it on [N·m]. */
  readonly drivingNow: number;
  /** Quickest rate either way [rad/s]. */
  readonly fastest: number;
  /** Of the damper's pressed side [Pa]; of its pulled side, below the reservoir's [Pa]. */
  readonly highestPressure: number;
  readonly deepestSuction: number;
  /** Rate with which it met the stop [rad/s]; null when it never did. */
  readonly struckAt: number | null;
  /** Where it came to rest, or was when it was given up [rad], and when that was [s]. */
  readonly reached: number;
  readonly duration: number;
  /** Metal was in it. */
  readonly loaded: boolean;
}

/** Before anything has turned. */
export function atRest(body: Body, { inclination, time }: BodyState, metal: MetalLoad): Turned {
  const driving = drivingAt(body, inclination, metal);
  return {
    driving,
    drivingNow: driving,
    held: frictionLimit(body, metal),
    fastest: 0,
    highestPressure: 0,
    deepestSuction: 0,
    struckAt: null,
    reached: inclination,
    duration: time,
    loaded: metal.mass > 0,
  };
}

function drivingAt(body: Body, inclination: number, metal: MetalLoad): number {
  const { gravity, metal: byMetal } = weightTorques(body, inclination, metal);
  return -(gravity + byMetal);
}

/** The same after one more state, under the metal's load there. */
export function turnedTo(turned: Turned, body: Body, state: BodyState, metal: MetalLoad): Turned {
  const { pressure, suction } = damperState(body.damper, state.inclination, state.rate);
  return {
    ...turned,
    drivingNow: drivingAt(body, state.inclination, metal),
    fastest: Math.max(turned.fastest, Math.abs(state.rate), state.struckAt ?? 0),
    highestPressure: Math.max(turned.highestPressure, pressure),
    deepestSuction: Math.max(turned.deepestSuction, suction),
    struckAt: state.struckAt,
    reached: state.inclination,
    duration: turned.struckAt === null ? state.time : turned.duration,
  };
}
