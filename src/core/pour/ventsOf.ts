import type { OpenVent } from '$src/core/flow/gas';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Section } from '$src/core/section/section';

/** The section's vents in the mesh, with what is blocked taken off and all cavities counted. */
export function ventsOf(section: Section, mesh: Mesh): OpenVent[] {
  return section.vents.map((vent) => ({
    cell: cellAt(mesh, vent.place),
    area: vent.area * (1 - vent.blocked) * (vent.place > section.mouth ? section.cavities : 1),
  }));
}

function cellAt(mesh: Mesh, place: number): number {
  let i = 0;
  while (i < mesh.cells - 1 && mesh.x[i + 1]! < place) i++;
  return i;
}
