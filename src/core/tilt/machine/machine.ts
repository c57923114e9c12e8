import { fromBar, fromCelsius, fromDegrees, fromLitres, fromMillimetres } from '$src/core/units';
import type { Oil } from './oil';

/**
 * A hinged machine that falls under its own weight and is held back by an oil damper. Places "on the body" are in the
 * frame of the die with the pivot at 0: x along the die axis away from the basin, y up from the floor [m]. Places "on
 * the floor" are in the room with the pivot at 0: x level, y up.
 */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** A part that turns: die, basin, frame. */
export interface Part {
  readonly name: string;
  /** [kg] */
  readonly mass: number;
  /** Centre of gravity on the body [m]. */
  readonly at: Place;
  /** Radius of gyration about its own centre of gravity [m]. */
  readonly gyration: number;
}

/** A weight added on an arm. */
export interface Weight {
  /** [kg] */
  readonly mass: number;
  /** From the pivot [m]. */
  readonly radius: number;
  /** From the die axis on the body, + towards the roof [rad]. */
  readonly angle: number;
}

export interface Cylinder {
  /** [m] */
  readonly bore: number;
  readonly rod: number;
  /** Length from eye to eye, shortest and longest [m]. */
  readonly shortest: number;
  readonly longest: number;
  /** On the body and on the floor [m]. */
  readonly attachment: Place;
  readonly anchor: Place;
}

/** The bypass valve: what its maker gives. Its laminar and its orifice part lie in series. */
export type Valve =
  | {
      readonly by: 'turns';
      /** Open by so many turns, of so many. */
      readonly open: number;
      readonly turns: number;
      /** Passage wide open and shut (leakage past the needle) [m]; its area grows evenly with the turns. */
      readonly diameter: number;
      readonly leak: number;
      /** Length of the narrow passage [m] and coefficient of its orifice. */
      readonly length: number;
      readonly coefficient: number;
    }
  | { readonly by: 'Kv'; readonly kv: number };

export interface Machine {
  readonly parts: readonly Part[];
  readonly weights: readonly Weight[];
  readonly cylinder: Cylinder;
  readonly valve: Valve;
  /** Hose and ports between cylinder, valve and reservoir [m]. */
  readonly line: { readonly diameter: number; readonly length: number };
  readonly oil: Oil;
  /** Oil in the reservoir that can be drawn or taken up, and oil in all [m³]. */
  readonly reservoir: number;
  readonly oilVolume: number;
  /** Bearing: journal radius [m] and coefficient of friction. */
  readonly bearing: { readonly radius: number; readonly friction: number };
  /** Extra hold over the last stretch before the lower stop [rad], growing to this [N·m·s]. */
  readonly cushion: { readonly over: number; readonly damping: number };
  /** A check valve lets the body go back freely. */
  readonly oneWayReturn: boolean;
  /** Torque it is lifted back with after a pour [N·m]; absent = a quarter more than it needs. Decides no fall. */
  readonly returnTorque?: number;
  /** Highest pressure that hose, seals and cylinder are made for [Pa]. */
  readonly highestPressure: number;
}

/** A bench machine of an invented shop, to start from. */
export const BENCH_MACHINE: Machine = {
  parts: [
    { name: 'die', mass: 60, at: { x: 0.1, y: 0.05 }, gyration: 0.12 },
    { name: 'basin', mass: 9, at: { x: -0.06, y: 0.03 }, gyration: 0.05 },
    { name: 'frame', mass: 25, at: { x: 0.02, y: 0.01 }, gyration: 0.2 },
  ],
  weights: [{ mass: 10, radius: 0.3, angle: fromDegrees(0) }],
  cylinder: {
    bore: fromMillimetres(32),
    rod: fromMillimetres(16),
    shortest: 0.38,
    longest: 0.62,
    attachment: { x: 0.12, y: -0.03 },
    anchor: { x: 0.35, y: 0.36 },
  },
  valve: {
    by: 'turns',
    open: 1.5,
    turns: 5,
    diameter: fromMillimetres(3),
    leak: fromMillimetres(0.3),
    length: fromMillimetres(12),
    coefficient: 0.61,
  },
  line: { diameter: fromMillimetres(8), length: 0.8 },
  oil: { grade: 'ISO VG 46', temperature: fromCelsius(25), thinning: null },
  reservoir: fromLitres(0.3),
  oilVolume: fromLitres(0.6),
  bearing: { radius: fromMillimetres(15), friction: 0.1 },
  cushion: { over: fromDegrees(10), damping: 400 },
  oneWayReturn: true,
  highestPressure: fromBar(100),
};
