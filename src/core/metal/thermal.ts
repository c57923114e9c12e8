import type { Confidence, Sourced } from './metal';

/** A usual range of a property or setting, with where it comes from. Units as the property says (SI). */
export interface SourcedRange {
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly confidence: Confidence;
}

/**
 * What a casting metal is to heat: freezing range, heats, the solid, and what it shrinks.
 * Additive to `Metal`: joined to it by `base`, so that a metal without it still flows. Each value may be edited; the
 * user's own stand in `Metal.thermal`.
 */
export interface ThermalMetal {
  /** Key of the metal it belongs to, `Metal.base`. */
  readonly base: string;
  /** Temperature above which all is liquid [K]. */
  readonly liquidus: Sourced;
  /** Temperature below which all is solid [K]; at most the liquidus. */
  readonly solidus: Sourced;
  /** [J/kg] */
  readonly latentHeat: Sourced;
  /** Specific heat of the liquid and of the solid near its solidus [J/(kg K)]. */
  readonly liquidHeat: Sourced;
  readonly solidHeat: Sourced;
  /** Density of the solid at room temperature [kg/m³]. */
  readonly solidDensity: Sourced;
  /** Heat conductivity of the solid [W/(m K)]. */
  readonly solidConductivity: Sourced;
  /** Solid fraction at which a front can no longer be pushed on, 0 to 1. */
  readonly coherency: Sourced;
  /** Volume lost on freezing, share of the liquid volume. */
  readonly freezingShrinkage: Sourced;
  /** Patternmaker's linear contraction from solidus to room temperature, share of length; free, not held by a die. */
  readonly contraction: Sourced;
  /** Share of a black body's radiation that the skinned surface of the liquid gives off, over 0 to 1. */
  readonly emissivity: Sourced;
  /** [K] */
  readonly pouringRange: SourcedRange;
  /** Die temperature when the metal comes [K]. */
  readonly dieRange: SourcedRange;
}

/** Properties a metal has of its user's own, instead of those of its base. */
export type OwnThermal = Partial<Omit<ThermalMetal, 'base'>>;
export type ThermalField = keyof OwnThermal;
