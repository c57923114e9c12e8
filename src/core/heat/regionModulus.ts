import type { Mesh } from '$src/core/mesh/mesh';
import { wholeContact } from './contactArea';
import type { Heat } from './heat';
import { PLUG } from './plug';

/** What of the heat says how cells are cooled. */
export type Cooled = Pick<Heat, 'walls' | 'region'>;

/** Volume and cooled area of full mesh cells from one to another, both included. */
function between(heat: Cooled, mesh: Mesh, first: number, last: number): { volume: number; area: number } {
  let volume = 0;
  let area = 0;
  for (let i = first; i <= last; i++) {
    volume += mesh.volume[i]!;
    area += wholeContact(heat.walls, mesh, i);
  }
  return { volume, area };
}

/**
 * Modulus about a full mesh cell [m]: volume over cooled area of a plug's length of its region around it. About half the
 * wall where it is wide. Of the slice alone it would fall to nothing beside an upright wall as the mesh is refined,
 * though the metal next to it feeds heat to that wall.
 */
export function modulusAbout(heat: Cooled, mesh: Mesh, i: number): number {
  const [first, last] = plugAbout(heat, mesh, i);
  const { volume, area } = between(heat, mesh, first, last);
  return volume / area;
}

/** The mesh cells of a plug's length around one, moved inward where its region ends, all of them where it is shorter. */
function plugAbout(heat: Cooled, mesh: Mesh, i: number): [first: number, last: number] {
  const { facePlace } = mesh;
  const isOne = (cell: number): boolean =>
    cell >= 0 &&
    cell < mesh.cells &&
    heat.region[cell] === heat.region[i] &&
    mesh.open[cell] === mesh.open[i];
  const middle = (facePlace[i]! + facePlace[i + 1]!) / 2;
  let first = i;
  let last = i;
  while (facePlace[last + 1]! - facePlace[first]! < PLUG) {
    const isBefore = isOne(first - 1);
    const isAfter = isOne(last + 1);
    if (!isBefore && !isAfter) break;
    const left = middle - facePlace[first]!;
    const right = facePlace[last + 1]! - middle;
    if (isBefore && (!isAfter || left <= right)) first--;
    else last++;
  }
  return [first, last];
}

/** Of a region: its whole volume [m³], and the modulus of its thickest plug [m]. */
export interface RegionModulus {
  readonly volume: number;
  readonly thickest: number;
}

/**
 * Modulus of a region with all of it full. Cells under an opening have no roof of their own and are left out: what
 * stands in an open basin is judged by its own metal.
 */
export function regionModulus(heat: Cooled, mesh: Mesh, region: number): RegionModulus {
  let volume = 0;
  let thickest = 0;
  for (let i = 0; i < mesh.cells; i++) {
    if (heat.region[i] !== region || mesh.open[i]) continue;
    volume += mesh.volume[i]!;
    thickest = Math.max(thickest, modulusAbout(heat, mesh, i));
  }
  return { volume, thickest };
}

/**
 * Metal that stands on the mouth under the roof: as much of a volume [m³] as the roofed cells behind the mouth hold, from the
 * mouth on, and its modulus [m]. The step from basin to die counts, which is most of what cools a shallow rest.
 */
export function restOverMouth(
  { walls }: Pick<Cooled, 'walls'>,
  mesh: Mesh,
  most: number,
): { volume: number; modulus: number } {
  let volume = 0;
  let area = 0;
  for (let i = mesh.mouthFace - 1; i >= 0 && !mesh.open[i] && volume < most; i--) {
    const share = Math.min(1, (most - volume) / mesh.volume[i]!);
    volume += share * mesh.volume[i]!;
    // An upright wall is met as soon as its cell is: it stands at the face towards the mouth.
    const upright = (walls.foot[i]! + walls.hanging[i]!) * mesh.width[i]!;
    area += upright + share * (wholeContact(walls, mesh, i) - upright);
  }
  return { volume, modulus: area > 0 ? volume / area : 0 };
}
