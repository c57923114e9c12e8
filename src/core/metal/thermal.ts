import type { Sourced, Whence } from './metal';

/** Temperatures usual for something [K]. */
export interface TemperatureRange {
  readonly low: number;
  readonly high: number;
}

export type SourcedRange = TemperatureRange & Whence;

/**
 * What a casting metal is to heat: freezing range, heats, the solid, and what it shrinks.
 * Additive to `Metal`: joined to it by `base`, so that a metal without it still flows. Bare numbers in SI: where
 * each comes from stands apart (`ThermalSources`), for only the metal's own table tells it, and nothing waits for that.
 * Each may be edited; the user's own stand in `Metal.thermal`.
 */
export interface ThermalMetal {
  /** Key of the metal it belongs to, `Metal.base`. */
  readonly base: string;
  /** Temperature above which all is liquid [K]. */
  readonly liquidus: number;
  /** Temperature below which all is solid [K]; at most the liquidus. */
  readonly solidus: number;
  /** [J/kg] */
  readonly latentHeat: number;
  /** Specific heat of the liquid and of the solid near its solidus [J/(kg K)]. */
  readonly liquidHeat: number;
  readonly solidHeat: number;
  /** Density of the solid at room temperature [kg/m³]. */
  readonly solidDensity: number;
  /** Heat conductivity of the solid [W/(m K)]. */
  readonly solidConductivity: number;
  /** Solid fraction at which a front can no longer be pushed on, 0 to 1. */
  readonly coherency: number;
  /** Volume lost on freezing, share of the liquid volume. */
  readonly freezingShrinkage: number;
  /** Patternmaker's linear contraction from solidus to room temperature, share of length; free, not held by a die. */
  readonly contraction: number;
  /** Share of a black body's radiation that the skinned surface of the liquid gives off, over 0 to 1. */
  readonly emissivity: number;
  /** [K] */
  readonly pouringRange: TemperatureRange;
  /** Die temperature when the metal comes [K]. */
  readonly dieRange: TemperatureRange;
}

export type ThermalField = Exclude<keyof ThermalMetal, 'base'>;
export type RangeField = 'pouringRange' | 'dieRange';
export type NumberField = Exclude<ThermalField, RangeField>;

/** Where each of a metal's thermal properties comes from. */
export type ThermalSources = Readonly<Record<ThermalField, Whence>>;

/** Properties a metal has of its user's own, instead of those of its base. */
export type OwnThermal = {
  readonly [F in ThermalField]?: F extends RangeField ? SourcedRange : Sourced;
};
