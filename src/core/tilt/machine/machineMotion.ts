import { sampledMotion } from '../sampledMotion';
import type { Motion } from '../tilt';
import { type Body, type MetalLoad, makeBody, NO_METAL, torquesAt } from './body';
import { damperState } from './damper';
import type { Machine } from './machine';
import { OIL_HEAT } from './oil';
import { type BodyState, bodyAtRest, stepBody } from './stepBody';
import { atRest, type Turned, turnedTo } from './turned';

/** A machine let go at one inclination until it meets its lower stop [rad]. */
export interface Release {
  readonly start: number;
  readonly end: number;
  readonly machine: Machine;
}

/** The load of the metal as the body turns; the level fill gives one without a run. */
export type MetalAt = (inclination: number) => MetalLoad;

/** What is known of the tilt at each sample; torques [N·m] with + raising the inclination. */
export interface Trace {
  readonly time: Float64Array;
  readonly inclination: Float64Array;
  readonly rate: Float64Array;
  readonly gravity: Float64Array;
  readonly metal: Float64Array;
  readonly damper: Float64Array;
  readonly friction: Float64Array;
  readonly cushion: Float64Array;
  /** Along the cylinder [N]; of its pressed side [Pa]; of its pulled side, below the reservoir's [Pa]. */
  readonly force: Float64Array;
  readonly pressure: Float64Array;
  readonly suction: Float64Array;
  /** From eye to eye [m]. */
  readonly length: Float64Array;
  /** Heating of all the oil by what the damper has taken up so far, none of it lost [K]. */
  readonly warming: Float64Array;
}

export interface MachineRun {
  readonly motion: Motion;
  readonly trace: Trace;
  /** Rate with which it met the stop [rad/s]; null: the body hangs, or was still under way after LONGEST_TILT. */
  readonly struckAt: number | null;
  readonly turned: Turned;
}

/** Given up after this long [s]. */
export const LONGEST_TILT = 60;
/** Between samples [s]. */
const SAMPLE = 0.005;
/** So slow for so long, and it hangs. */
export const HANGING_RATE = 2e-4;
export const HANGING_TIME = 1;

/** Lets the machine go and follows it; the metal, when given, stands level at every inclination. */
export function machineMotion(
  { start, end, machine }: Release,
  metalAt: MetalAt = () => NO_METAL,
): MachineRun {
  const body = makeBody(machine, end, start);
  let state = bodyAtRest(body, start, metalAt(start));
  const states = [state];
  let hangingFor = 0;
  while (state.struckAt === null && state.time < LONGEST_TILT && hangingFor < HANGING_TIME) {
    state = stepBody(body, state, metalAt(state.inclination), SAMPLE);
    states.push(state);
    hangingFor = Math.abs(state.rate) < HANGING_RATE ? hangingFor + SAMPLE : 0;
  }
  const trace = traceOf(body, states, metalAt);
  return {
    motion: sampledMotion(trace),
    trace,
    struckAt: state.struckAt,
    turned: states
      .slice(1)
      .reduce(
        (turned, one) => turnedTo(turned, body, one, metalAt(one.inclination)),
        atRest(body, states[0]!, metalAt(start)),
      ),
  };
}

function traceOf(body: Body, states: readonly BodyState[], metalAt: MetalAt): Trace {
  const torques = states.map(({ inclination, rate }) =>
    torquesAt(body, inclination, rate, metalAt(inclination)),
  );
  const dampers = states.map(({ inclination, rate }) => damperState(body.damper, inclination, rate));
  const column = <T>(rows: readonly T[], read: (row: T) => number) => Float64Array.from(rows, read);
  return {
    time: column(states, (one) => one.time),
    inclination: column(states, (one) => one.inclination),
    rate: column(states, (one) => one.rate),
    gravity: column(torques, (one) => one.gravity),
    metal: column(torques, (one) => one.metal),
    damper: column(torques, (one) => one.damper),
    friction: column(torques, (one) => one.friction),
    cushion: column(torques, (one) => one.cushion),
    force: column(dampers, (one) => one.force),
    pressure: column(dampers, (one) => one.pressure),
    suction: column(dampers, (one) => one.suction),
    length: column(dampers, (one) => one.length),
    warming: warmingOf(body, states, torques),
  };
}

function warmingOf(
  body: Body,
  states: readonly BodyState[],
  torques: readonly { damper: number }[],
): Float64Array {
  const heat = body.machine.oilVolume * body.damper.oil.density * OIL_HEAT;
  const warming = new Float64Array(states.length);
  for (let i = 1; i < states.length; i++) {
    const powers = [i - 1, i].map((k) => -torques[k]!.damper * states[k]!.rate);
    warming[i] =
      warming[i - 1]! + ((powers[0]! + powers[1]!) / 2) * ((states[i]!.time - states[i - 1]!.time) / heat);
  }
  return warming;
}
