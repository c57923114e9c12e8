/**
 * What stands between metal and die steel. Insulating coats are laid on thick and rough; graphite is laid on thin
 * and lets the casting go. Three fields matter: thickness, conductivity and texture, and fluidity hangs more on
 * texture than on conductivity (die coat and fluidity, University of Birmingham 2006, abstract read).
 */
export interface Coat {
  /** [m] */
  readonly thickness: number;
  /** [W/(m K)] */
  readonly conductivity: number;
  /** Mean thickness of the air held in the texture [m]. */
  readonly airLayer: number;
  /** Gap opened by shrinkage of the casting [m]; 0 while the metal is liquid. */
  readonly gap: number;
}

/** Air at about 600 °C [W/(m K)]; handbook value, from memory. */
export const AIR_CONDUCTIVITY = 0.06;

export type Texture = 'smooth' | 'medium' | 'rough';

/** Air held under the metal by the texture of a coat [m]; 5 to 15 µm from memory, low confidence. */
export const AIR_LAYERS: Readonly<Record<Texture, number>> = { smooth: 5e-6, medium: 10e-6, rough: 15e-6 };

/**
 * Heat transfer from metal to die steel [W/(m² K)]: resistances in series,
 * 1/h = thickness/conductivity + (air layer + gap)/conductivity of air.
 * Source: interfacial heat transfer in the aluminium gravity die casting process, Metall. Mater. Trans. B 35
 * (2004) 721, abstract read: the sum of coat and air layer predicted what was measured.
 * @throws RangeError when nothing resists
 */
export function coatTransfer(coat: Coat): number {
  const resistance = coat.thickness / coat.conductivity + (coat.airLayer + coat.gap) / AIR_CONDUCTIVITY;
  if (!(resistance > 0 && Number.isFinite(resistance)))
    throw new RangeError(`coat: got a resistance of ${resistance} m² K/W, expected a positive number`);
  return 1 / resistance;
}
