import { fromCentistokes } from '$src/core/units';
import { blendViscosity, type TwoPoints, viscosityAt } from './viscosity';

/** A mineral hydraulic oil of a grade. */
export interface Grade extends TwoPoints {
  readonly name: OilGrade;
  /** [kg/m³] at about 15 °C. */
  readonly density: number;
}

export type OilGrade =
  | 'ISO VG 10'
  | 'ISO VG 15'
  | 'ISO VG 22'
  | 'ISO VG 32'
  | 'ISO VG 46'
  | 'ISO VG 68'
  | 'ISO VG 100';

const grade = (name: OilGrade, at40: number, at100: number, density: number): Grade => ({
  name,
  at40: fromCentistokes(at40),
  at100: fromCentistokes(at100),
  density,
});

/** Mid-points at 40 °C by ISO 3448; viscosity at 100 °C of a common mineral oil, viscosity index 95 to 105 (from memory). */
export const GRADES: readonly Grade[] = [
  grade('ISO VG 10', 10, 2.6, 850),
  grade('ISO VG 15', 15, 3.4, 855),
  grade('ISO VG 22', 22, 4.3, 860),
  grade('ISO VG 32', 32, 5.4, 865),
  grade('ISO VG 46', 46, 6.8, 870),
  grade('ISO VG 68', 68, 8.7, 875),
  grade('ISO VG 100', 100, 11.4, 880),
];

/** A second liquid in the damper, told so that an existing mixture can be analysed. */
export interface Thinning {
  /** Share of the whole by mass, 0 to 0.5. */
  readonly massShare: number;
  /** [kg/m³] */
  readonly density: number;
  /** [m²/s] */
  readonly at40: number;
  readonly at100: number;
}

/** What is in the damper. */
export interface Oil {
  readonly grade: OilGrade;
  /** [K] */
  readonly temperature: number;
  readonly thinning: Thinning | null;
}

export interface OilState {
  /** Kinematic [m²/s] and dynamic viscosity [Pa·s]. */
  readonly kinematic: number;
  readonly viscosity: number;
  /** [kg/m³] */
  readonly density: number;
}

export const gradeNamed = (name: OilGrade): Grade => GRADES.find((one) => one.name === name)!;

/**
 * The oil as it is in the damper. The grade by ASTM D341 in the short form, the second liquid in the full form, blended
 * by mass at this temperature (Refutas); volumes add up and densities are held constant.
 */
export function oilState({ grade: name, temperature, thinning }: Oil): OilState {
  const base = gradeNamed(name);
  const own = viscosityAt(base, temperature);
  if (!thinning || thinning.massShare === 0)
    return { kinematic: own, viscosity: own * base.density, density: base.density };
  const { massShare } = thinning;
  const second = viscosityAt(thinning, temperature, 'full');
  const kinematic = blendViscosity(own, second, massShare, 'Refutas');
  const density = 1 / ((1 - massShare) / base.density + massShare / thinning.density);
  return { kinematic, viscosity: kinematic * density, density };
}

/** Mass share of a second liquid measured out by volume. */
export function massShareOf(volumeShare: number, density: number, secondDensity: number): number {
  const second = volumeShare * secondDensity;
  return second / (second + (1 - volumeShare) * density);
}

/** Mineral oil near room temperature (common practice, no source) [J/(kg K)]. */
export const OIL_HEAT = 1900;
