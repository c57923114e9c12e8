import { buildMesh } from '$src/core/mesh/mesh';
import type { Section } from '$src/core/section/section';
import type { Part } from './afterFill';
import { AIR_CONDUCTIVITY } from './coat';
import { OPENED_GAP } from './coats';
import { wallsOf } from './contactArea';
import type { HeatPlan, RegionHeat } from './heatPlan';
import { type Cooled, regionModulus, restOverMouth } from './regionModulus';

/** Fine enough for moduli; they come from areas and volumes, which any mesh keeps. */
const MESH_CELLS = 100;

/** Rounding of the sum of the die's regions, a share of the metal. */
const ROUNDING = 1e-9;

/**
 * Solid fraction by which any metal holds itself and can draw away from the die. A skin-forming metal still runs with
 * much of it solid, and so is called coherent late, but its skin holds it early: waiting for its coherency would tell a
 * dwell half as long as that of a mushy metal. Taken as for long-range metals; common practice, no source.
 */
const HOLDS_ITSELF = 0.25;

/** What stands still once the die is full: each region of the die, and the metal left over its mouth under the roof. */
export interface RestingParts {
  readonly die: readonly Part[];
  /** null when the basin has no roof, or no metal is left over. */
  readonly feeder: Part | null;
}

/**
 * The parts of a full die. Each die region counts by its thickest place, the feeder by the metal that stands on the mouth.
 * All metal is taken at the temperature it had when the tilt began, which is on the long side.
 *
 * @param volume of metal, all cavities together [m³]
 * @param opensGap whether a gap opens between casting and die once the metal holds itself (OPENED_GAP), or never does
 */
export function restingParts(
  section: Section,
  plan: HeatPlan,
  volume: number,
  opensGap: boolean,
): RestingParts {
  const mesh = buildMesh(section, MESH_CELLS);
  const basin = section.regions.length;
  const regionAt = (x: number) => {
    const found = section.regions.findIndex(({ end }) => x <= end);
    return found < 0 ? basin - 1 : found;
  };
  const middle = (i: number) => (mesh.x[i]! + mesh.x[i + 1]!) / 2;
  const region = Uint16Array.from({ length: mesh.cells }, (_, i) =>
    i < mesh.mouthFace ? basin : regionAt(middle(i)),
  );
  const cooled: Cooled = { walls: wallsOf(mesh, section.cavities), region };
  const partOf = (name: string, k: number, modulus: number, metal: number): Part => ({
    name,
    volume: metal,
    modulus,
    contact: plan.regions[k]!,
    temperature: plan.startTemperature,
    gap: opensGap ? gapOf(plan.regions[k]!, Math.min(plan.freezing.coherency, HOLDS_ITSELF)) : null,
  });
  const die = section.regions.flatMap(({ name }, k) => {
    const { volume: full, thickest } = regionModulus(cooled, mesh, k);
    return full > 0 ? [partOf(name, k, thickest, full)] : [];
  });
  const rest = restOverMouth(cooled, mesh, volume - die.reduce((sum, part) => sum + part.volume, 0));
  const beside = regionAt(middle(Math.max(0, mesh.mouthFace - 1)));
  const isAny = rest.volume > ROUNDING * volume;
  return { die, feeder: isAny ? partOf('feeder', beside, rest.modulus, rest.volume) : null };
}

/** The gap's air in series with the coat; opens when the metal can hold itself. Our assumption. */
function gapOf({ transfer }: RegionHeat, solidFraction: number) {
  return { transfer: 1 / (1 / transfer + OPENED_GAP / AIR_CONDUCTIVITY), solidFraction };
}
