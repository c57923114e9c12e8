import { surfaceTransfer } from '$src/core/heat/freeSurface';
import type { HeatPlan, RegionHeat } from '$src/core/heat/heatPlan';
import type { Ladling } from '$src/core/heat/ladling';
import { thermalOfMetal } from '$src/core/heat/thermalMetals';
import { type WaitResult, waitInBasin } from '$src/core/heat/waitInBasin';
import { waitWarnings } from '$src/core/heat/waitWarnings';
import type { Issue } from '$src/core/issue';
import { fillLevelFromVolume } from '$src/core/level/fillLevel';
import { levelPath } from '$src/core/level/levelPath';
import { poolAreas } from '$src/core/level/poolAreas';
import { criticalSpeed as criticalSpeedOf } from '$src/core/metal/criticalSpeed';
import type { Metal } from '$src/core/metal/metal';
import type { Section } from '$src/core/section/section';
import { fromCelsius } from '$src/core/units';

const SHOP_TEMPERATURE = fromCelsius(20);

export interface LadledMetal {
  /** Speed at which its skin folds [m/s]. */
  readonly criticalSpeed: number;
  /** Null where nothing is known of how the metal freezes. */
  readonly wait: WaitResult | null;
  /** What is worth a second look; the pour can still be computed. Paths are fields of the ladling. */
  readonly warnings: readonly Issue[];
}

/**
 * What ladling and the wait do to the metal that stands in the basin when the tilt begins.
 * @param heat of the pour at its pouring temperature; null = not known
 * @param volume that is poured [m³], skull and dross not counted
 * @param start inclination [rad]
 */
export function ladledMetal(
  section: Section,
  heat: HeatPlan | null,
  volume: number,
  start: number,
  ladling: Ladling,
  metal: Metal,
): LadledMetal {
  const criticalSpeed = criticalSpeedOf(metal);
  const level = fillLevelFromVolume(section, start, volume);
  const stand = {
    level: level ?? 0,
    skimBar: level === null ? null : ladling.skimBar,
    lip: level === null ? null : 0,
    dross: ladling.dross,
  };
  const warnings = waitWarnings(ladling, stand, criticalSpeed);
  const thermal = thermalOfMetal(metal);
  if (!heat || !thermal) return { criticalSpeed, wait: null, warnings };
  const pool = {
    ...poolOf(section, heat, volume, start),
    surfaceTransfer: surfaceTransfer(thermal.emissivity, heat.startTemperature, SHOP_TEMPERATURE),
  };
  const wait = waitInBasin(heat.freezing, pool, ladling, heat.startTemperature, criticalSpeed);
  return { criticalSpeed, wait, warnings };
}

function poolOf(section: Section, heat: HeatPlan, volume: number, start: number) {
  const pools = levelPath(section, volume, start, start, null).pools[0]!;
  const { contact, surface } = poolAreas(section, pools, start);
  return {
    volume,
    contactArea: contact.reduce((sum, area) => sum + area, 0),
    surfaceArea: surface,
    contact: meanContact(heat.regions, contact),
    shopTemperature: SHOP_TEMPERATURE,
  };
}

/** One contact that draws as much heat as all regions together do. */
function meanContact(regions: readonly RegionHeat[], areas: readonly number[]) {
  const area = areas.reduce((sum, one) => sum + one, 0);
  const conductance = regions.reduce((sum, { transfer }, k) => sum + transfer * areas[k]!, 0);
  const pull = regions.reduce(
    (sum, { transfer, dieTemperature }, k) => sum + transfer * areas[k]! * dieTemperature,
    0,
  );
  return { transfer: conductance / area, dieTemperature: pull / conductance };
}
