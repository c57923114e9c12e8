import { type Mesh, STEEPEST_FLOOR_COS, stepTables } from './mesh';

/**
 * The mesh seen upside down, y reversed: past −90° the roof lies under the metal and does a floor's work. Lab
 * elevations stay what they are, since Z = x sin φ + y cos φ = x sin φ + (−y)(−cos φ), so the same step runs on it
 * with the cosine's sign turned. Cells, faces and widths keep their numbers; paths run along the roof.
 */
export function mirrorMesh(mesh: Mesh): Mesh {
  const floorLeft = negated(mesh.roofLeft);
  const floorRight = negated(mesh.roofRight);
  const slopes = roofSlopes(mesh, floorLeft, floorRight);
  const turned = {
    ...mesh,
    floorLeft,
    floorRight,
    roofLeft: negated(mesh.floorLeft),
    roofRight: negated(mesh.floorRight),
    ...slopes,
    sill: negated(mesh.ceiling),
    ceiling: negated(mesh.sill),
    facePath: Float64Array.from(mesh.facePath, (_, j) => {
      const left = slopes.path[Math.max(j - 1, 0)]!;
      const right = slopes.path[Math.min(j, mesh.cells - 1)]!;
      return (left + right) / 2;
    }),
    step: Uint8Array.from(mesh.step, (_, j) =>
      j > 0 && j < mesh.cells && Math.abs(floorRight[j - 1]! - floorLeft[j]!) > 1e-9 ? 1 : 0,
    ),
    rims: mesh.rims.map((rim) => ({ ...rim, y: -rim.y })),
    pivotY: -mesh.pivotY,
    upsideDown: !mesh.upsideDown,
  };
  return { ...turned, tables: stepTables(turned) };
}

function negated(values: Float64Array): Float64Array {
  return Float64Array.from(values, (value) => -value);
}

/** Path and angle of the roof; open cells, whose roof is only virtual, keep the floor's. */
function roofSlopes(mesh: Mesh, left: Float64Array, right: Float64Array) {
  const path = mesh.path.slice();
  const floorCos = mesh.floorCos.slice();
  const floorSin = mesh.floorSin.slice();
  for (let i = 0; i < mesh.cells; i++) {
    if (mesh.open[i]) continue;
    const run = mesh.x[i + 1]! - mesh.x[i]!;
    const rise = right[i]! - left[i]!;
    floorCos[i] = Math.max(run / Math.hypot(run, rise), STEEPEST_FLOOR_COS);
    floorSin[i] = Math.sign(rise) * Math.sqrt(1 - floorCos[i]! ** 2);
    path[i] = run / floorCos[i]!;
  }
  return { path, floorCos, floorSin };
}
