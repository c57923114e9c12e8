/** Stefan–Boltzmann constant [W/(m² K⁴)], exact since 2019. */
const STEFAN_BOLTZMANN = 5.670374419e-8;

/**
 * What still air takes off a hot level surface [W/(m² K)]: Nu = 0.15 Ra^(1/3) (Incropera, from memory) with air at the
 * mean of 700 and 20 °C gives 9, and with metal at 1140 °C as much. Draught takes more.
 */
export const AIR_TRANSFER = 10;

/**
 * Heat transfer of a free surface to the shop [W/(m² K)], radiation and air together:
 * h = ε σ (T⁴ − T₀⁴)/(T − T₀) + h_air. Source: Stefan–Boltzmann law, a grey surface in a wide shop.
 *
 * @param emissivity ε, over 0 to 1
 * @param temperature of the metal T and of the shop T₀ [K]
 */
export function surfaceTransfer(emissivity: number, temperature: number, shopTemperature: number): number {
  const squares = temperature * temperature + shopTemperature * shopTemperature;
  return emissivity * STEFAN_BOLTZMANN * squares * (temperature + shopTemperature) + AIR_TRANSFER;
}
