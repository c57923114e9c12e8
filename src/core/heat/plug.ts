import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { CONTACT_DEPTH, type Heat } from './heat';

/**
 * Length of metal whose mean says whether it is stiff or cold [m]. A plug is no single slice: heat moves √(α t), some
 * 6 mm, along the metal in a second, and dendrites that touch over less than about two wall thicknesses are pushed on by
 * what follows. A length, not a count of mesh cells, so that a finer mesh does not choke or lap sooner. Ours, no source.
 */
export const PLUG = 10e-3;

/** Whether there is enough metal to hold or be held. */
export const isMetal = (heat: Heat, flow: Flow, i: number): boolean =>
  flow.depth[i]! >= CONTACT_DEPTH && !Number.isNaN(heat.solid[i]!);

/** The mesh cell that holds a place along the floor path [m]. */
export function cellOf(mesh: Mesh, place: number): number {
  let cell = mesh.cells - 1;
  while (cell > 0 && mesh.facePlace[cell]! >= place) cell--;
  return cell;
}

/**
 * Mean of a field of the heat over the metal of a plug's length from a mesh cell on, to the left (−1) or the right (1).
 * Bare floor before the first metal is passed over, behind it ends the plug. NaN where there is no metal.
 */
export function plugMean(
  field: Float64Array,
  heat: Heat,
  flow: Flow,
  mesh: Mesh,
  cell: number,
  side: 1 | -1,
): number {
  let volume = 0;
  let sum = 0;
  let length = 0;
  for (let i = cell; i >= 0 && i < mesh.cells && length < PLUG; i += side) {
    if (!isMetal(heat, flow, i)) {
      if (volume > 0) break;
      continue;
    }
    volume += flow.volume[i]!;
    sum += flow.volume[i]! * field[i]!;
    length += mesh.facePlace[i + 1]! - mesh.facePlace[i]!;
  }
  return sum / volume;
}
