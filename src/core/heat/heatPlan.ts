import type { ThermalMetal } from '$src/core/metal/thermal';
import type { Freezing } from './freezing';

/** Heat of one region of the section; regions in the section's order, the basin's among them. */
export interface RegionHeat {
  /** Heat transfer from metal to die [W/(m² K)], metal in contact. From `coatTransfer`, or typed. */
  readonly transfer: number;
  /** Die surface when the metal comes [K]. */
  readonly dieTemperature: number;
  /** A lower (or higher) transfer once metal has been in contact for a while: a gap opening; null = never. */
  readonly later: { readonly after: number; readonly transfer: number } | null;
}

/** What a metal is once the die is full, and the temperatures usual for it. */
export type SetMetal = Pick<
  ThermalMetal,
  'base' | 'solidConductivity' | 'freezingShrinkage' | 'pouringRange' | 'dieRange'
>;

/** Everything heat needs to know of a pour. Plain data, SI. */
export interface HeatPlan {
  readonly freezing: Freezing;
  /** Temperature of the metal when the tilt begins [K]; see `waitInBasin`. */
  readonly startTemperature: number;
  readonly regions: readonly RegionHeat[];
  /** Heat the die's surface takes up with each kelvin [J/(m² K)], lumped; null = the die keeps its temperature during the pour. */
  readonly dieSurface: number | null;
  /** A front colder than this does not join what it meets, and a stalled one leaves a lap [K]. */
  readonly lapTemperature: number;
  /** The metal of a user who typed freezing data of his own; absent = the metal of the book that freezes so. */
  readonly own?: SetMetal;
}

/** Common practice, no source: a front that has lost its superheat laps. */
export const defaultLapTemperature = (freezing: Freezing): number => freezing.liquidus;
