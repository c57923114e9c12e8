import type { Motion } from '../tilt';
import { type MetalLoad, makeBody } from './body';
import { LONGEST_TILT, type Release } from './machineMotion';
import { bodyAtRest, stepBody } from './stepBody';

/** A motion that is found while the metal flows: each step of the run turns the body under the metal's load. */
export interface LiveMotion extends Motion {
  /** Turns the body dt further [s] under this load; the motion then answers for its end. */
  advance(metal: MetalLoad, dt: number): void;
}

/**
 * The machine let go with metal in it. `duration` is the longest tilt until the stop is met, and the time of meeting
 * it from then on. Answers hold for the present only, whatever time is asked.
 */
export function liveMotion({ start, end, machine }: Release, metal: MetalLoad): LiveMotion {
  const body = makeBody(machine, end);
  let state = bodyAtRest(body, start, metal);
  let duration = LONGEST_TILT;
  return {
    start,
    end,
    get duration() {
      return duration;
    },
    inclinationAt: () => state.inclination,
    rateAt: () => state.rate,
    accelerationAt: () => state.acceleration,
    advance(load, dt) {
      const wasTurning = state.struckAt === null;
      state = stepBody(body, state, load, dt);
      if (wasTurning && state.struckAt !== null) duration = state.time;
    },
  };
}
