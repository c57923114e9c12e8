/**
 * Freezing time in a thick sand mould, t = C M² [s], M [m]. For comparison only: a coated die follows the first
 * power (freezingTime.ts), and sand constants in a metal die are a classic error.
 * Source: Chvorinov, Giesserei 27 (1940) (from memory).
 */
export function sandFreezingTime(constant: number, modulus: number): number {
  return constant * modulus ** 2;
}

/** Constant from a known casting [s/m²]. */
export function sandConstant(time: number, modulus: number): number {
  return time / modulus ** 2;
}

/** Modulus that freezes in a time [m]. */
export function sandModulus(constant: number, time: number): number {
  return Math.sqrt(time / constant);
}

export interface SandMould {
  /** [W/(m K)], [kg/m³], [J/(kg K)] */
  readonly conductivity: number;
  readonly density: number;
  readonly heat: number;
  /** [K] */
  readonly temperature: number;
}

/**
 * Constant from properties [s/m²]: C = π/4 (ρ_s L/(T_m − T_0))²/(k ρ c), mould without end, poured without superheat.
 * Source: Flemings, Solidification Processing, 1974; Poirier & Geiger (from memory).
 */
export function sandConstantOf(
  solidDensity: number,
  latentHeat: number,
  freezingTemperature: number,
  mould: SandMould,
): number {
  const heat = (solidDensity * latentHeat) / (freezingTemperature - mould.temperature);
  return ((Math.PI / 4) * heat ** 2) / (mould.conductivity * mould.density * mould.heat);
}
