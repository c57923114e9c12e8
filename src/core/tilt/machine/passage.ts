import { fromBar, fromCubicMetresPerHour } from '$src/core/units';

/** Pressure lost per flow in a round laminar passage [Pa·s/m³]: 128 μ L/(π d⁴), Hagen-Poiseuille. */
export function laminarResistance(viscosity: number, length: number, diameter: number): number {
  return (128 * viscosity * length) / (Math.PI * diameter ** 2 * diameter ** 2);
}

/** Pressure lost per flow squared in a sharp orifice [Pa·s²/m⁶]: Q = C A √(2 Δp/ρ). */
export function orificeResistance(density: number, coefficient: number, area: number): number {
  return density / (2 * (coefficient * area) ** 2);
}

/** Density of water that Kv is defined with [kg/m³]. */
const KV_WATER = 1000;

/** Effective orifice area C·A [m²] of a valve of that Kv: Q [m³/h] = Kv √(Δp [bar]/SG), IEC 60534. */
export function areaOfKv(kv: number): number {
  return fromCubicMetresPerHour(kv) / Math.sqrt((2 * fromBar(1)) / KV_WATER);
}

/** A passage with a laminar and a quadratic part in series. */
export interface Passage {
  readonly laminar: number;
  readonly quadratic: number;
}

/** [Pa] at that flow [m³/s ≥ 0]. */
export const pressureLoss = ({ laminar, quadratic }: Passage, flow: number): number =>
  flow * (laminar + quadratic * flow);

/** Flow [m³/s] that this pressure [Pa ≥ 0] drives through. */
export function flowThrough({ laminar, quadratic }: Passage, pressure: number): number {
  // The rationalised root: exact also when either part is 0.
  const root = Math.sqrt(laminar ** 2 + 4 * quadratic * pressure);
  return laminar + root > 0 ? (2 * pressure) / (laminar + root) : Number.POSITIVE_INFINITY;
}

export const inSeries = (...passages: readonly Passage[]): Passage => ({
  laminar: passages.reduce((sum, one) => sum + one.laminar, 0),
  quadratic: passages.reduce((sum, one) => sum + one.quadratic, 0),
});
