import { sine } from '$src/core/elementary/sine';
import type { Machine, Weight } from '$src/core/tilt/machine/machine';
import type { Release } from '$src/core/tilt/machine/machineMotion';
import type { Sought } from './leastSquares';

/** What of a machine may be changed to come close to what is wanted. */
export interface Changeable {
  readonly valve: boolean;
  /** Numbers of the weights, from 0. */
  readonly weights: readonly number[];
}

/** A setting of the machine as it was and as it comes closest. */
export interface ReachedSetting {
  readonly setting: 'valve' | 'weight';
  /** Number of the weight, from 0. */
  readonly index: number;
  readonly before: number;
  readonly value: number;
  readonly isAtEdge: boolean;
}

/** A weight can be taken off all but this, or made this heavy [kg]. */
export const WEIGHT = { least: 0.01, most: 200 } as const;
/** Least share of all turns looked at: next to shut. */
const SHUT = 1e-3;
const KV = { least: 1e-4, most: 20 } as const;
const EDGE = 1e-3;

/** How fine a shop sets a valve [turns, m³/h] and weighs a weight [kg]. */
const STEP = { turns: 0.01, kv: 1e-4, mass: 0.1 } as const;

export const openingOf = ({ valve }: Machine): number => (valve.by === 'Kv' ? valve.kv : valve.open);

export const openingRange = ({ valve }: Machine): Pick<Sought, 'least' | 'most'> =>
  valve.by === 'Kv' ? KV : { least: valve.turns * SHUT, most: valve.turns };

export const openingStep = ({ valve }: Machine): number => (valve.by === 'Kv' ? STEP.kv : STEP.turns);

export function withOpening(machine: Machine, opening: number): Machine {
  const { valve } = machine;
  return { ...machine, valve: valve.by === 'Kv' ? { by: 'Kv', kv: opening } : { ...valve, open: opening } };
}

/** The machine with these masses [kg] in the places of the numbered weights. */
export function withMasses(machine: Machine, numbers: readonly number[], masses: readonly number[]): Machine {
  const weights = machine.weights.map((weight, i): Weight => {
    const at = numbers.indexOf(i);
    return at < 0 ? weight : { ...weight, mass: masses[at]! };
  });
  return { ...machine, weights };
}

const toStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6));

/** The machine with what may change in steps a shop can set, within its range. What is as it was stays to the last digit. */
export function inSteps(machine: Machine, before: Machine, { valve, weights }: Changeable): Machine {
  const masses = weights.map((i) => {
    const { mass } = machine.weights[i]!;
    return mass === before.weights[i]!.mass ? mass : toStep(mass, STEP.mass);
  });
  const opening = openingOf(machine);
  const changed = withMasses(machine, weights, masses);
  if (!valve || opening === openingOf(before)) return changed;
  const step = openingStep(machine);
  const { most } = openingRange(machine);
  return withOpening(changed, Math.min(Math.max(toStep(opening, step), step), most));
}

/** Each setting that might have changed, and what became of it. */
export function settingsOf(
  before: Machine,
  after: Machine,
  { valve, weights }: Changeable,
): ReachedSetting[] {
  const opening: ReachedSetting = {
    setting: 'valve',
    index: 0,
    before: openingOf(before),
    value: openingOf(after),
    isAtEdge: isAtEdge(openingOf(after), settableRange(before)),
  };
  const masses = weights.map((index): ReachedSetting => {
    const value = after.weights[index]!.mass;
    return {
      setting: 'weight',
      index,
      before: before.weights[index]!.mass,
      value,
      isAtEdge: isAtEdge(value, WEIGHT),
    };
  });
  return valve ? [opening, ...masses] : masses;
}

const settableRange = (machine: Machine): Pick<Sought, 'least' | 'most'> => {
  const { least, most } = openingRange(machine);
  return { least: Math.max(least, openingStep(machine)), most };
};

/** A weight that was made as heavy as is looked at: no weight of a shop, and still not enough. */
export const isBeyondShop = ({ setting, before, value }: ReachedSetting): boolean =>
  setting === 'weight' && value > before && value >= WEIGHT.most * (1 - EDGE);

const isAtEdge = (value: number, { least, most }: Pick<Sought, 'least' | 'most'>): boolean =>
  value <= least * (1 + EDGE) || value >= most * (1 - EDGE);

/** What a weight of this place falls through from start to end, for each kg [m]; positive: it drives the tilt. */
export const dropOf = (
  { radius, angle }: Pick<Weight, 'radius' | 'angle'>,
  { start, end }: Pick<Release, 'start' | 'end'>,
): number => radius * (sine(angle + start) - sine(angle + end));

/** How much the added weights drive the body from start to end: mass × drop [kg·m]. */
export const driveOf = ({ machine, ...turn }: Release): number =>
  machine.weights.reduce((sum, weight) => sum + weight.mass * dropOf(weight, turn), 0);

/** A machine with these settings, and all else as it is. */
export function withSettings(machine: Machine, settings: readonly ReachedSetting[]): Machine {
  const masses = settings.filter(({ setting }) => setting === 'weight');
  const changed = withMasses(
    machine,
    masses.map(({ index }) => index),
    masses.map(({ value }) => value),
  );
  const opening = settings.find(({ setting }) => setting === 'valve');
  return opening ? withOpening(changed, opening.value) : changed;
}
