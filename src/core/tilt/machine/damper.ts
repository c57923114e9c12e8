import { type Reach, reachAt, reachOf, type Turn } from './linkage';
import type { Machine, Valve } from './machine';
import { type OilState, oilState } from './oil';
import {
  areaOfKv,
  inSeries,
  laminarResistance,
  orificeResistance,
  type Passage,
  pressureLoss,
} from './passage';

/** Coefficient of the entry into a hose (from memory). */
const LINE_COEFFICIENT = 0.8;
/** A leak this small keeps a shut valve from dividing by 0 [m]. */
const LEAST_DIAMETER = 1e-5;

/** The damper with what does not change during a tilt worked out. */
export interface Damper {
  readonly machine: Machine;
  readonly oil: OilState;
  /** From the pressed side through the valve, and from the reservoir to the pulled side. */
  readonly bypass: Passage;
  readonly feed: Passage;
  /** Pressed area when the rod is pulled out, when it is pushed in, and of the rod [m²]. */
  readonly ringArea: number;
  readonly boreArea: number;
  readonly rodArea: number;
}

export interface DamperState {
  /** Torque on the body, against the motion [N·m], + raises the inclination. */
  readonly torque: number;
  /** Force along the cylinder [N] and pressure of its pressed side [Pa], both ≥ 0. */
  readonly force: number;
  readonly pressure: number;
  /** Pressure of the pulled side below the reservoir's [Pa]. */
  readonly suction: number;
  /** From eye to eye [m]. */
  readonly length: number;
}

export function makeDamper(machine: Machine): Damper {
  const oil = oilState(machine.oil);
  const line = lineOf(machine, oil);
  const { bore, rod } = machine.cylinder;
  const boreArea = circle(bore);
  const rodArea = circle(rod);
  return {
    machine,
    oil,
    bypass: inSeries(valvePassage(machine.valve, oil), line),
    feed: line,
    ringArea: boreArea - rodArea,
    boreArea,
    rodArea,
  };
}

/** A needle valve's narrow passage is taken as round with the area that is open. */
export function valvePassage(valve: Valve, oil: OilState): Passage {
  if (valve.by === 'Kv')
    return { laminar: 0, quadratic: orificeResistance(oil.density, 1, areaOfKv(valve.kv)) };
  const diameter = openDiameter(valve);
  return {
    laminar: laminarResistance(oil.viscosity, valve.length, diameter),
    quadratic: orificeResistance(oil.density, valve.coefficient, circle(diameter)),
  };
}

function openDiameter({ open, turns, diameter, leak }: Extract<Valve, { by: 'turns' }>): number {
  const share = Math.min(Math.max(open / turns, 0), 1);
  return Math.max(LEAST_DIAMETER, Math.sqrt(leak ** 2 + share * (diameter ** 2 - leak ** 2)));
}

function lineOf({ line }: Machine, oil: OilState): Passage {
  return {
    laminar: laminarResistance(oil.viscosity, line.length, line.diameter),
    quadratic: orificeResistance(oil.density, LINE_COEFFICIENT, circle(line.diameter)),
  };
}

const circle = (diameter: number): number => (Math.PI * diameter ** 2) / 4;

/** What the damper does at this inclination and rate [rad/s]. */
export const damperState = (damper: Damper, inclination: number, rate: number): DamperState =>
  stateAt(damper, reachAt(damper.machine.cylinder, inclination), rate);

/** Its torque alone, as in `damperState`. */
export const damperTorque = (damper: Damper, turn: Turn, rate: number): number =>
  stateAt(damper, reachOf(damper.machine.cylinder, turn), rate).torque;

function stateAt(damper: Damper, { length, lever }: Reach, rate: number): DamperState {
  const speed = lever * rate;
  const isFree = damper.machine.oneWayReturn && rate > 0;
  const isPulled = speed > 0;
  const area = isPulled ? damper.ringArea : damper.boreArea;
  const pressure = isFree ? 0 : pressureLoss(damper.bypass, Math.abs(speed) * area);
  const force = pressure * area;
  // Pulling makes room for the rod's volume, which comes from the reservoir.
  const suction = isPulled && !isFree ? pressureLoss(damper.feed, speed * damper.rodArea) : 0;
  return { torque: -Math.sign(speed) * force * lever, force, pressure, suction, length };
}
