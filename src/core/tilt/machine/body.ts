import { hyperbolicTangent } from '$src/core/elementary/exponential';
import { cosine, sine, sineAndCosine } from '$src/core/elementary/sine';
import { GRAVITY } from '$src/core/gravity';
import { type Damper, damperTorque, makeDamper } from './damper';
import type { Turn } from './linkage';
import type { Machine } from './machine';

/** The metal as the body feels it: its weight where it is, its inertia as if it were carried. */
export interface MetalLoad {
  /** [kg] */
  readonly mass: number;
  /** Mass × level distance of its centre of gravity from the pivot, + towards the die end [kg·m]. */
  readonly moment: number;
  /** Sum of mass × (distance from the pivot)² [kg·m²]. */
  readonly inertia: number;
}

export const NO_METAL: MetalLoad = { mass: 0, moment: 0, inertia: 0 };

/** Parts and weights taken together. */
export interface Body {
  readonly machine: Machine;
  readonly damper: Damper;
  /** [kg], [kg·m²] */
  readonly mass: number;
  readonly inertia: number;
  /** Mass × place of the centre of gravity on the body [kg·m]. */
  readonly moment: { readonly x: number; readonly y: number };
  /** Where the lower stop is, and the upper one it is let go from [rad]. */
  readonly stop: number;
  readonly upperStop: number;
}

export function makeBody(machine: Machine, stop: number, upperStop = Number.POSITIVE_INFINITY): Body {
  const points = [
    ...machine.parts.map(({ mass, at, gyration }) => ({ mass, ...at, gyration })),
    ...machine.weights.map(({ mass, radius, angle }) => ({
      mass,
      x: radius * cosine(angle),
      y: radius * sine(angle),
      gyration: 0,
    })),
  ];
  const sum = (measure: (point: (typeof points)[number]) => number) =>
    points.reduce((total, point) => total + measure(point), 0);
  return {
    machine,
    damper: makeDamper(machine),
    mass: sum(({ mass }) => mass),
    inertia: sum(({ mass, x, y, gyration }) => mass * (x * x + y * y + gyration * gyration)),
    moment: { x: sum(({ mass, x }) => mass * x), y: sum(({ mass, y }) => mass * y) },
    stop,
    upperStop,
  };
}

/** Torques on the body [N·m]; + raises the inclination. */
export interface Torques {
  readonly gravity: number;
  readonly metal: number;
  readonly damper: number;
  readonly friction: number;
  readonly cushion: number;
}

export const sumOf = ({ gravity, metal, damper, friction, cushion }: Torques): number =>
  gravity + metal + damper + friction + cushion;

/** Bearing friction comes up over this rate, so that a body at rest feels none [rad/s]. */
const FRICTION_RATE = 1e-4;

export function torquesAt(body: Body, inclination: number, rate: number, metal: MetalLoad): Torques {
  const turn = sineAndCosine(inclination);
  return {
    gravity: -GRAVITY * levelPlace(body.moment, turn),
    metal: -GRAVITY * metal.moment,
    damper: damperTorque(body.damper, turn, rate),
    friction: -frictionLimit(body, metal) * hyperbolicTangent(rate / FRICTION_RATE),
    cushion: -cushionDamping(body, inclination) * rate,
  };
}

export function weightTorques(
  body: Body,
  inclination: number,
  metal: MetalLoad,
): Pick<Torques, 'gravity' | 'metal'> {
  return {
    gravity: -GRAVITY * levelPlace(body.moment, sineAndCosine(inclination)),
    metal: -GRAVITY * metal.moment,
  };
}

const levelPlace = ({ x, y }: Body['moment'], { sin, cos }: Turn): number => x * cos - y * sin;

/** Torque the bearing can hold [N·m]: friction × load × journal radius; the load is the weight. */
export function frictionLimit({ machine, mass }: Body, metal: MetalLoad): number {
  return machine.bearing.friction * machine.bearing.radius * (mass + metal.mass) * GRAVITY;
}

/** Whether the bearing alone holds a body that is at rest. */
export function isHeld(body: Body, inclination: number, metal: MetalLoad): boolean {
  const { gravity, metal: byMetal } = weightTorques(body, inclination, metal);
  return Math.abs(gravity + byMetal) < frictionLimit(body, metal);
}

function cushionDamping({ machine: { cushion }, stop }: Body, inclination: number): number {
  if (!(cushion.over > 0)) return 0;
  const inside = 1 - (inclination - stop) / cushion.over;
  return cushion.damping * Math.min(Math.max(inside, 0), 1);
}
