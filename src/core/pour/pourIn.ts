import type { Flow } from '$src/core/flow/flow';
import type { Pool } from '$src/core/level/pools';
import { FIGURES, levelOf, rotateLevels, volumeUnder, Z1, Z4 } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';

/**
 * Places pools of still metal in the mesh, each with exactly its volume: the level of the pool, cut where the
 * pool ends, then shifted by the little that the cut through a mesh cell costs.
 */
export function pourIn(flow: Flow, mesh: Mesh, pools: readonly Pool[], sin: number, cos: number): void {
  rotateLevels(flow.levels, mesh, sin, cos);
  flow.volume.fill(0);
  for (const pool of pools) fillPool(flow, mesh, pool);
  for (let i = 0; i < mesh.cells; i++) {
    flow.level[i] = levelOf(flow.levels, mesh, i, flow.volume[i]!);
    flow.depth[i] = flow.volume[i]! * mesh.tables.perFootprint[i]!;
  }
  // The first step compares areas with those before it: without them it would take the metal for newly come.
  for (let j = 1; j < mesh.cells; j++)
    flow.area[j] = ((flow.volume[j - 1]! + flow.volume[j]!) * mesh.tables.perPath[j]!) / 2;
}

function fillPool(flow: Flow, mesh: Mesh, pool: Pool): void {
  const cells = cellsFor(mesh, pool);
  const level = matchLevel(flow, mesh, cells, pool);
  for (const i of cells) flow.volume[i] = flow.volume[i]! + volumeUnder(flow.levels, mesh, i, level);
  const sum = cells.reduce((total, i) => total + volumeUnder(flow.levels, mesh, i, level), 0);
  const partly = cells.find((i) => flow.volume[i]! > 0 && flow.volume[i]! < mesh.volume[i]! * 0.999);
  if (partly !== undefined) flow.volume[partly] = flow.volume[partly]! + (pool.volume - sum);
}

/**
 * The mesh cells whose middle lies in the pool. Where these hold too little, as when a pool is shorter than a cell or ends
 * in one that stands upright, those on either side that it reaches into as well.
 */
function cellsFor(mesh: Mesh, pool: Pool): number[] {
  const { x, volume } = mesh;
  const inPool = (place: number) => place > pool.from && place < pool.to;
  const cells = Array.from({ length: mesh.cells }, (_, i) => i).filter((i) =>
    inPool((x[i]! + x[i + 1]!) / 2),
  );
  const reach = (i: number) =>
    i >= 0 && i < mesh.cells ? Math.min(x[i + 1]!, pool.to) - Math.max(x[i]!, pool.from) : 0;
  let room = cells.reduce((sum, i) => sum + volume[i]!, 0);
  while (room < pool.volume) {
    const beside = cells.length > 0 ? [cells[0]! - 1, cells.at(-1)! + 1] : [...x.keys()].slice(0, -1);
    const next = beside.reduce((a, b) => (reach(b) > reach(a) ? b : a));
    if (!(reach(next) > 0)) break;
    cells.push(next);
    cells.sort((a, b) => a - b);
    room += volume[next]!;
  }
  return cells;
}

function matchLevel(flow: Flow, mesh: Mesh, cells: readonly number[], pool: Pool): number {
  let low = Math.min(...cells.map((i) => flow.levels[i * FIGURES + Z1]!));
  let high = Math.max(...cells.map((i) => flow.levels[i * FIGURES + Z4]!));
  for (let k = 0; k < 200 && high - low > 0; k++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const held = cells.reduce((total, i) => total + volumeUnder(flow.levels, mesh, i, middle), 0);
    if (held < pool.volume) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
