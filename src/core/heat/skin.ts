/** The solid that grows against the die: density [kg/m³], latent heat [J/kg], conductivity [W/(m K)]. */
export interface Skin {
  readonly density: number;
  readonly latentHeat: number;
  readonly conductivity: number;
}

/**
 * Time for a skin to reach a thickness X [m] with coat and skin in series [s]:
 * t = ρ L/ΔT (X/h + X²/(2 k)). Quasi-static: the heat of the skin itself is left out.
 * Source: standard series resistance (from memory), derived again for the check table.
 */
export function skinTime(skin: Skin, thickness: number, transfer: number, difference: number): number {
  const heat = (skin.density * skin.latentHeat) / difference;
  return heat * (thickness / transfer + thickness ** 2 / (2 * skin.conductivity));
}

/** Thickness of the skin after a time [m]; inverse of `skinTime`. */
export function skinThickness(skin: Skin, time: number, transfer: number, difference: number): number {
  const reach = skin.conductivity / transfer;
  const grown = (2 * skin.conductivity * difference * time) / (skin.density * skin.latentHeat);
  return grown / (reach + Math.sqrt(reach * reach + grown));
}

/** What the skin's own conduction adds to the interface's time, as a share: h X/(2 k). */
export function conductionShare(thickness: number, transfer: number, conductivity: number): number {
  return (transfer * thickness) / (2 * conductivity);
}
