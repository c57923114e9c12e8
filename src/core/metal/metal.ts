import type { OwnThermal } from './thermal';

/** How sure we are of a value. `assumed` = chosen by us, without a source of its own. */
export type Confidence = 'high' | 'medium' | 'low' | 'assumed' | 'yours';

/** Where a value comes from, and how sure we are of it. */
export interface Whence {
  readonly source: string;
  readonly confidence: Confidence;
}

/** One property with where it comes from. The unit is fixed by the property (SI), see `Metal`. */
export interface Sourced extends Whence {
  readonly value: number;
}

/** A casting metal as poured. Each value carries source and confidence; the user may change any of them. */
export interface Metal {
  /** Key of the metal it was made from: 'A356', 'AlSi12', 'aluminium bronze', 'brass', 'ZA-12', 'AZ91'. */
  readonly base: string;
  readonly name: string;
  /** Liquid density at the pouring temperature [kg/m³]. */
  readonly density: Sourced;
  /** Dynamic viscosity [Pa s]. */
  readonly viscosity: Sourced;
  /** Surface tension of the oxidised surface [N/m]. */
  readonly surfaceTension: Sourced;
  /** Contact angle on the coated die [rad]; assumed, see docs/model.md. */
  readonly contactAngle: Sourced;
  /** Pouring temperature [K]. */
  readonly pouringTemperature: Sourced;
  /** Critical front speed typed by the user [m/s]; null = from density and surface tension. */
  readonly criticalSpeedOverride: number | null;
  /** What its user typed of its freezing and heat; what is absent is that of the base. Absent = all of it. */
  readonly thermal?: OwnThermal;
}
