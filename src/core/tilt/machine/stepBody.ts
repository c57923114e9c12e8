import { type Body, isHeld, type MetalLoad, sumOf, torquesAt } from './body';

export interface BodyState {
  readonly time: number;
  readonly inclination: number;
  readonly rate: number;
  /** d(rate)/dt at this state [rad/s²]. */
  readonly acceleration: number;
  /** Rate with which it met the lower stop [rad/s, positive]; null while it has not. */
  readonly struckAt: number | null;
}

/** Alexander's two-stage method: second order, and a stiff damper may be as stiff as it likes. */
const GAMMA = 1 - Math.SQRT1_2;
/** Steps of the solver are cut to at most this [s]. */
export const BODY_STEP = 2.5e-3;
const MOST_ITERATIONS = 60;
const RATE_TOLERANCE = 1e-13;
const NEWTON_STEPS = 8;
/** Small against rates, large against round-off [rad/s]. */
const NUDGE = 1e-7;
/** So slow, a body that its bearing can hold is at rest [rad/s]. */
const STICKING_RATE = 5e-4;

export function bodyAtRest(body: Body, inclination: number, metal: MetalLoad): BodyState {
  const acceleration = accelerationAt(body, inclination, 0, metal);
  return { time: 0, inclination, rate: 0, acceleration, struckAt: null };
}

/** The body dt later [s], with the metal's load held; in equal steps of at most `longest`. */
export function stepBody(
  body: Body,
  state: BodyState,
  metal: MetalLoad,
  dt: number,
  longest: number = BODY_STEP,
): BodyState {
  const steps = Math.max(1, Math.ceil(dt / longest - 1e-9));
  let next = state;
  for (let i = 0; i < steps; i++) next = shortStep(body, next, metal, dt / steps);
  return next;
}

function shortStep(body: Body, state: BodyState, metal: MetalLoad, dt: number): BodyState {
  const time = state.time + dt;
  if (state.struckAt !== null) return { ...state, time, rate: 0, acceleration: 0 };
  const { inclination, rate } = state;
  // A bearing that holds the body would otherwise let it creep, since friction has to come up over some rate.
  if (Math.abs(rate) < STICKING_RATE && isHeld(body, inclination, metal))
    return { ...state, time, rate: 0, acceleration: 0 };
  const g = GAMMA * dt;
  const first = implicitStage(body, metal, inclination, rate, g, rate + g * state.acceleration);
  const rest = (1 - GAMMA) * dt;
  const last = implicitStage(
    body,
    metal,
    inclination + rest * first.rate,
    rate + rest * first.acceleration,
    g,
    rate + dt * first.acceleration,
  );
  if (last.inclination >= body.upperStop && last.rate >= 0)
    return { time, inclination: body.upperStop, rate: 0, acceleration: 0, struckAt: null };
  if (last.inclination > body.stop) return { time, struckAt: null, ...last };
  const struckAt = Math.abs(last.rate);
  return { time, inclination: body.stop, rate: 0, acceleration: 0, struckAt };
}

interface Stage {
  readonly inclination: number;
  readonly rate: number;
  readonly acceleration: number;
}

/** Solves rate = base + g a(inclination base + g rate, rate). The damper only ever brakes, so there is one root. */
function implicitStage(
  body: Body,
  metal: MetalLoad,
  inclination: number,
  base: number,
  g: number,
  guess: number,
): Stage {
  const accelerationOf = (rate: number) => accelerationAt(body, inclination + g * rate, rate, metal);
  const excess = (rate: number) => rate - base - g * accelerationOf(rate);
  const rate = newtonRoot(excess, guess) ?? monotoneRoot(excess, base, base + g * accelerationOf(0));
  return { inclination: inclination + g * rate, rate, acceleration: (rate - base) / g };
}

/** Newton's way with the slope taken over a nudge; null when it does not settle. */
function newtonRoot(valueAt: (x: number) => number, guess: number): number | null {
  let x = guess;
  for (let k = 0; k < NEWTON_STEPS; k++) {
    const value = valueAt(x);
    if (Math.abs(value) <= RATE_TOLERANCE) return x;
    const slope = (valueAt(x + NUDGE) - value) / NUDGE;
    // The function rises by at least 1: a lesser slope is round-off.
    x -= value / Math.max(1, slope);
  }
  return null;
}

/** Root of a rising function near two guesses, by bracketing and false position with the stale end halved. */
function monotoneRoot(valueAt: (x: number) => number, guess: number, other: number): number {
  let low = Math.min(guess, other, 0);
  let high = Math.max(guess, other, 0);
  let atLow = valueAt(low);
  let atHigh = valueAt(high);
  for (let k = 0; atLow > 0 && k < MOST_ITERATIONS; k++) {
    low -= (high - low || 1e-3) * 2;
    atLow = valueAt(low);
  }
  for (let k = 0; atHigh < 0 && k < MOST_ITERATIONS; k++) {
    high += (high - low || 1e-3) * 2;
    atHigh = valueAt(high);
  }
  let moved = 0;
  for (let k = 0; k < MOST_ITERATIONS && high - low > RATE_TOLERANCE; k++) {
    const straight = (low * atHigh - high * atLow) / (atHigh - atLow);
    const middle = k % 4 < 3 && straight >= low && straight <= high ? straight : (low + high) / 2;
    const value = valueAt(middle);
    if (Math.abs(value) <= RATE_TOLERANCE) return middle;
    if (value < 0) {
      low = middle;
      atLow = value;
      if (moved < 0) atHigh /= 2;
      moved = -1;
    } else {
      high = middle;
      atHigh = value;
      if (moved > 0) atLow /= 2;
      moved = 1;
    }
  }
  return (low + high) / 2;
}

export function accelerationAt(body: Body, inclination: number, rate: number, metal: MetalLoad): number {
  return sumOf(torquesAt(body, inclination, rate, metal)) / (body.inertia + metal.inertia);
}
