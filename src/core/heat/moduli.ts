/** A cylinder of diameter D and height H [m]; one end may stand on hot metal and not be cooled. */
export function cylinderModulus(diameter: number, height: number, cooledEnds: 0 | 1 | 2): number {
  return (diameter * height) / (4 * height + cooledEnds * diameter);
}

export const sphereModulus = (diameter: number): number => diameter / 6;
/** Hemisphere on a diameter whose flat is not cooled. */
export const hemisphereModulus = (diameter: number): number => diameter / 6;

/** A block with three edges [m], cooled on all faces; an edge may be Infinity (plate, bar). */
export function blockModulus(a: number, b: number, c: number): number {
  return 1 / (2 * (1 / a + 1 / b + 1 / c));
}

/** Modulus a feeder needs over its casting: common rule 1.2, and 1.4 with a section between (from memory of the handbooks). */
export const FEEDER_MARGIN = 1.2;

/** Diameter of a cylinder of height `slenderness` × D with a given modulus [m]. */
export function cylinderDiameter(modulus: number, slenderness: number, cooledEnds: 0 | 1 | 2): number {
  return modulus / cylinderModulus(1, slenderness, cooledEnds);
}
