import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import type { MetalLoad } from '$src/core/tilt/machine/body';
import { type AddMetal, loadOf } from '$src/core/tilt/machine/loadOf';

/**
 * The metal of a run as the machine feels it at this inclination: each mesh cell's volume at its middle, half its depth
 * over the floor. The push of metal that speeds up along the die is left out: it is small beside the body's weight.
 */
export function metalLoad(mesh: Mesh, flow: Flow, density: number, inclination: number): MetalLoad {
  const side = mesh.upsideDown ? -1 : 1;
  const pieces = (add: AddMetal) => {
    for (let i = 0; i < mesh.cells; i++) {
      const floor = (mesh.floorLeft[i]! + mesh.floorRight[i]!) / 2;
      const x = (mesh.x[i]! + mesh.x[i + 1]!) / 2 - mesh.pivotX;
      const y = floor + flow.depth[i]! / 2 - mesh.pivotY;
      add(flow.volume[i]! * density, x, side * y);
    }
  };
  return loadOf(inclination, pieces);
}
