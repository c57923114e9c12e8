import { edgeBetween } from '$src/core/elementary/edgeBetween';
import type { Machine } from '$src/core/tilt/machine/machine';
import { LONGEST_TILT, machineMotion, type Release } from '$src/core/tilt/machine/machineMotion';
import { quickTilt } from './quickTilt';
import {
  type Changeable,
  dropOf,
  inSteps,
  isBeyondShop,
  openingRange,
  openingStep,
  type ReachedSetting,
  settingsOf,
  WEIGHT,
  withMasses,
  withOpening,
} from './settings';

export interface TimeTask extends Release {
  /** From let go to the lower stop, without metal [s]. */
  readonly wanted: number;
  readonly changeable: Changeable;
}

export interface ReachedTime {
  readonly machine: Machine;
  readonly settings: readonly ReachedSetting[];
  /** What it then takes [s]; null: it does not come to its stop within `LONGEST_TILT`. */
  readonly time: number | null;
  /** Whether that is what was wanted, as near as a shop's steps let it. */
  readonly isReached: boolean;
  /** What it takes as it stands [s]; null as above. */
  readonly timeBefore: number | null;
  /** Whether it comes nearer than as it stands by more than a shop's watch shows, with weights that a shop has. */
  readonly isNearer: boolean;
}

/** Nearer than this to the time wanted is the time wanted: a share of it, or the steps of a shop's watch [s]. Ours. */
const NEAR_SHARE = 0.02;
const WATCH = 0.1;
/** Far finer than a valve or a weight is set: of the logarithm of an opening, and [kg]. */
const FINE = 1e-6;

/**
 * The settings with which the machine, let go without metal, meets its stop after a wanted time. What changes least is
 * taken: the valve alone where that does it, and only then, with the valve as far as it goes, the weights, each by the
 * same mass and no more than it takes.
 */
export function reachTime({ wanted, changeable, start, end, machine }: TimeTask): ReachedTime {
  const timeOf = (body: Machine): number => quickTilt({ start, end, machine: body }).duration;
  const isNear = (body: Machine): boolean =>
    Math.abs(timeOf(body) - wanted) <= Math.max(WATCH, NEAR_SHARE * wanted);

  let reached = machine;
  if (changeable.valve) reached = byValve();
  if (changeable.weights.length > 0 && !isNear(reached)) reached = byWeights(reached);
  const [time, timeBefore] = [strokeTime(reached), strokeTime(machine)];
  const settings = settingsOf(machine, reached, changeable);
  const off = (stroke: number | null): number =>
    stroke === null ? Number.POSITIVE_INFINITY : Math.abs(stroke - wanted);
  return {
    machine: reached,
    settings,
    time,
    isReached: off(time) <= Math.max(WATCH, NEAR_SHARE * wanted),
    timeBefore,
    isNearer: off(time) < off(timeBefore) - WATCH && !settings.some(isBeyondShop),
  };

  function strokeTime(body: Machine): number | null {
    const run = machineMotion({ start, end, machine: body });
    return run.struckAt === null ? null : run.motion.duration;
  }

  function byValve(): Machine {
    const { least, most } = openingRange(machine);
    const exact = Math.exp(
      edgeBetween(
        (log) => timeOf(withOpening(machine, Math.exp(log))) <= wanted,
        Math.log(most),
        Math.log(least),
        FINE,
      ),
    );
    const step = openingStep(machine);
    const around = [Math.ceil(exact / step), Math.floor(exact / step)].map((steps) =>
      inSteps(withOpening(machine, steps * step), machine, changeable),
    );
    return nearestOf([machine, ...around]);
  }

  function byWeights(from: Machine): Machine {
    const { weights } = changeable;
    const changed = (by: number): Machine => {
      const masses = weights.map((i) => {
        const weight = machine.weights[i]!;
        const mass = weight.mass + by * Math.sign(dropOf(weight, { start, end }));
        return Math.min(Math.max(mass, WEIGHT.least), WEIGHT.most);
      });
      return withMasses(from, weights, masses);
    };
    const by = edgeBetween((mass) => timeOf(changed(mass)) <= wanted, WEIGHT.most, -WEIGHT.most, FINE);
    return inSteps(changed(by), machine, { valve: false, weights });
  }

  function nearestOf(bodies: readonly Machine[]): Machine {
    const off = (body: Machine): number => Math.abs(timeOf(body) - wanted);
    return bodies.reduce((best, one) => (off(one) < off(best) ? one : best));
  }
}

/** Times a machine can be asked for [s]. */
export const TIME_RANGE = { least: 0.2, most: LONGEST_TILT } as const;
