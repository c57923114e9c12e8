/** Liquid density that falls in a straight line with temperature: [kg/m³], [kg/(m³ K)], [K]. */
export interface DensityLine {
  readonly reference: number;
  readonly fall: number;
  readonly referenceTemperature: number;
}

/** Pure aluminium, Assael et al., J. Phys. Chem. Ref. Data 35 (2006) 285: uncertainty 0.7 % read, the two constants from memory. */
export const ALUMINIUM_DENSITY: DensityLine = {
  reference: 2377.23,
  fall: 0.311,
  referenceTemperature: 933.47,
};

export function liquidDensity(line: DensityLine, temperature: number): number {
  return line.reference - line.fall * (temperature - line.referenceTemperature);
}

/** Mass of a volume of liquid [kg], and the volume it has once cold and solid [m³]. */
export function ladleMass(density: number, volume: number): number {
  return density * volume;
}

export function solidVolume(mass: number, solidDensity: number): number {
  return mass / solidDensity;
}
