import type { Motion } from '../tilt';
import { type MetalLoad, makeBody } from './body';
import { HANGING_RATE, HANGING_TIME, LONGEST_TILT, type Release } from './machineMotion';
import { bodyAtRest, stepBody } from './stepBody';
import { atRest, type Turned, turnedTo } from './turned';

/** A motion that is found while the metal flows: each step of the run turns the body under the metal's load. */
export interface LiveMotion extends Motion {
  /** Turns the body dt further [s] under this load; the motion then answers for its end. */
  advance(metal: MetalLoad, dt: number): void;
  /** What the fall has come to so far. */
  turned(): Turned;
}

/**
 * The machine let go with metal in it. `duration` is the longest tilt until the stop is met, and the time of meeting
 * it from then on; of a body that hangs it is the present, as long as it hangs. Answers hold for the present only,
 * whatever time is asked.
 */
export function liveMotion({ start, end, machine }: Release, metal: MetalLoad): LiveMotion {
  const body = makeBody(machine, end, start);
  let state = bodyAtRest(body, start, metal);
  let turned = atRest(body, state, metal);
  let hangingFor = 0;
  return {
    start,
    end,
    get duration() {
      if (state.struckAt !== null) return turned.duration;
      return hangingFor >= HANGING_TIME ? state.time : LONGEST_TILT;
    },
    inclinationAt: () => state.inclination,
    rateAt: () => state.rate,
    accelerationAt: () => state.acceleration,
    advance(load, dt) {
      state = stepBody(body, state, load, dt);
      turned = turnedTo(turned, body, state, load);
      hangingFor = Math.abs(state.rate) < HANGING_RATE ? hangingFor + dt : 0;
    },
    turned: () => turned,
  };
}
