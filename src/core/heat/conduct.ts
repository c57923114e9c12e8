import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { temperatureOf } from './enthalpy';
import type { Heat } from './heat';

/** Most of the way to one temperature that two neighbours go in one step: keeps the explicit exchange stable. */
const MOST_OF_THE_WAY = 0.25;

/**
 * Conduction along the metal over a stretch of time [s]: k A ΔT/Δx between neighbours that both hold metal, what one
 * gives the other takes. Without it the slice of metal beside an upright wall would freeze by itself, the sooner the
 * finer the mesh; metal is so good a conductor (k/h some centimetres) that such a slice stays nearly as warm as the rest.
 */
export function conduct(heat: Heat, flow: Flow, mesh: Mesh, dt: number): void {
  const parts = partsOf(heat, mesh, dt);
  for (let k = 0; k < parts; k++) exchange(heat, flow, mesh, dt / parts);
}

/** In how many parts a stretch of time is gone through, so that on a fine mesh too all of the heat gets across. */
function partsOf({ freezing }: Heat, { x, cells }: Mesh, dt: number): number {
  const spacing = (x[cells]! - x[0]!) / cells;
  const diffusivity = freezing.conductivity / (freezing.density * freezing.liquidHeat);
  return Math.max(1, Math.ceil((diffusivity * dt) / (MOST_OF_THE_WAY * spacing * spacing)));
}

function exchange(heat: Heat, flow: Flow, mesh: Mesh, dt: number): void {
  const { freezing, enthalpy } = heat;
  const { conductivity, density, liquidHeat } = freezing;
  const { volume } = flow;
  const { x } = mesh;
  let before = volume[0]! > 0 ? temperatureOf(freezing, enthalpy[0]!) : Number.NaN;
  for (let i = 1; i < mesh.cells; i++) {
    const left = volume[i - 1]!;
    const right = volume[i]!;
    if (!(right > 0)) {
      before = Number.NaN;
      continue;
    }
    const here = temperatureOf(freezing, enthalpy[i]!);
    if (left > 0) {
      const sectionLeft = left / (x[i]! - x[i - 1]!);
      const sectionRight = right / (x[i + 1]! - x[i]!);
      const section = sectionLeft < sectionRight ? sectionLeft : sectionRight;
      const wanted = (conductivity * section * dt) / ((x[i + 1]! - x[i - 1]!) / 2);
      const most = MOST_OF_THE_WAY * density * liquidHeat * (left < right ? left : right);
      const given = (wanted < most ? wanted : most) * (before - here);
      enthalpy[i - 1] = enthalpy[i - 1]! - given / (density * left);
      enthalpy[i] = enthalpy[i]! + given / (density * right);
    }
    before = here;
  }
}
