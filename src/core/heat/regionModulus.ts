import type { Mesh } from '$src/core/mesh/mesh';
import type { Heat } from './heat';

/** What of the heat says how cells are cooled. */
export type Cooled = Pick<Heat, 'walls' | 'region'>;

/** Cooled area of a full mesh cell [m²]: floor, roof, upright walls and the sides of every cavity. */
function cooledArea(heat: Cooled, mesh: Mesh, i: number): number {
  const { floor, roof, foot, hanging, sidesPerVolume } = heat.walls;
  const width = mesh.width[i]!;
  return floor[i]! + roof[i]! + (foot[i]! + hanging[i]!) * width + sidesPerVolume[i]! * mesh.volume[i]!;
}

/** Modulus of a full mesh cell [m]: volume over cooled area. About half the wall where it is wide. */
export function cellModulus(heat: Cooled, mesh: Mesh, i: number): number {
  return mesh.volume[i]! / cooledArea(heat, mesh, i);
}

/** Of a region: its whole volume over its whole cooled area, and its thickest mesh cell's [m]. */
export interface RegionModulus {
  readonly volume: number;
  readonly mean: number;
  readonly thickest: number;
}

/**
 * Modulus of a region with all of it full. Cells under an opening have no roof of their own and are left out: what
 * stands in an open basin is judged by its own metal.
 */
export function regionModulus(heat: Cooled, mesh: Mesh, region: number): RegionModulus {
  let volume = 0;
  let area = 0;
  let thickest = 0;
  for (let i = 0; i < mesh.cells; i++) {
    if (heat.region[i] !== region || mesh.open[i]) continue;
    volume += mesh.volume[i]!;
    area += cooledArea(heat, mesh, i);
    thickest = Math.max(thickest, cellModulus(heat, mesh, i));
  }
  return { volume, mean: area > 0 ? volume / area : 0, thickest };
}
