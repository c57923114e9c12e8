import { makeBody, NO_METAL } from '$src/core/tilt/machine/body';
import { LONGEST_TILT, type Release } from '$src/core/tilt/machine/machineMotion';
import { bodyAtRest, stepBody } from '$src/core/tilt/machine/stepBody';
import { sampledMotion } from '$src/core/tilt/sampledMotion';
import type { Motion } from '$src/core/tilt/tilt';

/** Steps [s]: so many to a tilt, within bounds. The inclination strays by less than a hundredth of a degree, readings by more. */
const STEPS = 400;
const STEP = { least: 0.004, most: 0.02 } as const;

/** The machine let go without metal, in long steps and without torques: a fit turns it some hundred times. */
export function quickTilt({ start, end, machine }: Release, until: number = LONGEST_TILT): Motion {
  const body = makeBody(machine, end, start);
  const step = Math.min(Math.max(until / STEPS, STEP.least), STEP.most);
  let state = bodyAtRest(body, start, NO_METAL);
  const states = [state];
  while (state.struckAt === null && state.time < until) {
    state = stepBody(body, state, NO_METAL, step, step);
    states.push(state);
  }
  return sampledMotion({
    time: states.map(({ time }) => time),
    inclination: states.map(({ inclination }) => inclination),
    rate: states.map(({ rate }) => rate),
  });
}
