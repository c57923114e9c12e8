import type { Freezing } from './freezing';

/**
 * Heat content against temperature over a freezing range. Heat content H [J/kg] is counted from the solid at its
 * solidus, so it is negative below. The solid fraction falls linearly from 1 at the solidus to 0 at the liquidus
 * and the specific heat in between is the mean of solid and liquid, so H(T) is three straight pieces:
 *
 *   solid      H = c_s (T − T_s)                              H < 0
 *   freezing   H = (c_m + L/(T_l − T_s)) (T − T_s)            0 … H_l,  H_l = L + c_m (T_l − T_s)
 *   liquid     H = H_l + c_l (T − T_l)                        H > H_l
 *
 * When the range has no width (T_l = T_s) the middle piece is a plateau at T_s with H = L (1 − solid fraction).
 * The straight line between liquidus and solidus is ours: real alloys freeze faster near the liquidus, and
 * eutectic alloys at the bottom (docs/heat.md).
 */
export function enthalpyOf(freezing: Freezing, temperature: number): number {
  const { solidus, liquidus, solidHeat, liquidHeat } = freezing;
  if (temperature < solidus) return solidHeat * (temperature - solidus);
  // At a plateau the liquid end is meant: metal that has not begun to freeze.
  if (temperature >= liquidus) return liquidEnthalpy(freezing) + liquidHeat * (temperature - liquidus);
  return (liquidEnthalpy(freezing) * (temperature - solidus)) / (liquidus - solidus);
}

/** Temperature [K] of metal with heat content H [J/kg]. Inverse of `enthalpyOf`. */
export function temperatureOf(freezing: Freezing, enthalpy: number): number {
  const { solidus, liquidus, solidHeat, liquidHeat } = freezing;
  if (enthalpy < 0) return solidus + enthalpy / solidHeat;
  const liquid = liquidEnthalpy(freezing);
  if (enthalpy >= liquid) return liquidus + (enthalpy - liquid) / liquidHeat;
  return solidus + (enthalpy / liquid) * (liquidus - solidus);
}

/** Share that is solid, 0 to 1, of metal with heat content H [J/kg]; also on a plateau, where temperature cannot tell. */
export function solidFractionOf(freezing: Freezing, enthalpy: number): number {
  if (enthalpy <= 0) return 1;
  const liquid = liquidEnthalpy(freezing);
  return enthalpy >= liquid ? 0 : 1 - enthalpy / liquid;
}

/** Heat content [J/kg] at a solid fraction strictly between 0 and 1, or at either end of the range. */
export function enthalpyAtSolidFraction(freezing: Freezing, solidFraction: number): number {
  return (1 - solidFraction) * liquidEnthalpy(freezing);
}

/** Heat content at the liquidus, just before freezing begins [J/kg]. */
export function liquidEnthalpy(freezing: Freezing): number {
  const { solidus, liquidus, solidHeat, liquidHeat, latentHeat } = freezing;
  return latentHeat + ((solidHeat + liquidHeat) / 2) * (liquidus - solidus);
}
