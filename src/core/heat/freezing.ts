import type { ThermalMetal } from '$src/core/metal/thermal';

/** A freezing metal as the heat step sees it: bare numbers in SI, sources left behind. */
export interface Freezing {
  /** Density that turns the flow's volumes into mass [kg/m³]: the liquid's, in every state. */
  readonly density: number;
  /** [K], solidus ≤ liquidus. */
  readonly liquidus: number;
  readonly solidus: number;
  /** [J/kg] */
  readonly latentHeat: number;
  /** [J/(kg K)] */
  readonly liquidHeat: number;
  readonly solidHeat: number;
  /** Heat conductivity of the liquid [W/(m K)]. */
  readonly conductivity: number;
  /** Solid fraction at which a front stops, 0 to 1. */
  readonly coherency: number;
}

/** A liquid metal conducts about half as well as its solid at the melting point; from memory. */
const LIQUID_SHARE = 0.5;

/** The bare numbers of a metal; `density` is its liquid density [kg/m³] (`Metal.density.value`). */
export function freezingOf(thermal: ThermalMetal, density: number): Freezing {
  return {
    density,
    liquidus: thermal.liquidus,
    solidus: thermal.solidus,
    latentHeat: thermal.latentHeat,
    liquidHeat: thermal.liquidHeat,
    solidHeat: thermal.solidHeat,
    conductivity: LIQUID_SHARE * thermal.solidConductivity,
    coherency: thermal.coherency,
  };
}
