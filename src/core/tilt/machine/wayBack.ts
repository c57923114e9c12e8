import { GRAVITY } from '$src/core/gravity';
import { usableLimits } from '../range';
import type { MachineTilt } from '../tilt';
import { type Body, frictionLimit, type MetalLoad, makeBody, NO_METAL, weightTorques } from './body';
import { damperState } from './damper';
import { LONGEST_TILT } from './machineMotion';
import { bodyAtRest, stepBody } from './stepBody';

/** The empty body lifted back from its lower stop to its upper one. */
export interface WayBack {
  /** Torque that weights and bearing take at most on the way, and the torque it is lifted with [N·m]. */
  readonly needed: number;
  readonly torque: number;
  /** From stop to stop [s]; null when this torque does not bring it back within a minute. */
  readonly time: number | null;
  /** Of the damper on the way [Pa]; 0 when a check valve lets it go back freely. */
  readonly highestPressure: number;
}

/** A torque that is not given is what is needed and this much more, so that the body gets going. Ours. */
const TO_SPARE = 1.25;
const STEP = 0.005;
const LOOKS = 100;

/**
 * How the machine goes back: by a steady torque against its weights, its bearing and, without a one-way return, its
 * damper, and no quicker than the machine's quickest rate, which the hand or the drive holds. Without metal: the
 * casting is out, or as light as nothing beside the body.
 */
export function wayBack({ start, end, machine, limits }: MachineTilt): WayBack {
  const body = makeBody(machine, end, start);
  const needed = neededTorque(body);
  const torque = machine.returnTorque ?? TO_SPARE * needed;
  // A load of no mass whose moment lifts.
  const lift: MetalLoad = { ...NO_METAL, moment: -torque / GRAVITY };
  const { quickest } = usableLimits(limits);
  let state = bodyAtRest(body, end, lift);
  let highestPressure = 0;
  while (state.time < LONGEST_TILT && state.inclination < start) {
    state = stepBody(body, state, lift, STEP);
    if (state.struckAt !== null) break;
    if (state.rate > quickest) state = { ...state, rate: quickest, acceleration: 0 };
    highestPressure = Math.max(
      highestPressure,
      damperState(body.damper, state.inclination, state.rate).pressure,
    );
  }
  return { needed, torque, time: state.inclination < start ? null : state.time, highestPressure };
}

function neededTorque(body: Body): number {
  const against = Array.from({ length: LOOKS + 1 }, (_, i) => {
    const inclination = body.stop + ((body.upperStop - body.stop) * i) / LOOKS;
    return -weightTorques(body, inclination, NO_METAL).gravity;
  });
  return Math.max(0, ...against) + frictionLimit(body, NO_METAL);
}
