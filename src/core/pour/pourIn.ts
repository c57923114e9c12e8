import type { Flow } from '$src/core/flow/flow';
import { levelOf, rotateLevels, volumeUnder } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';

/** A pool of metal at rest: its level and where it reaches along the axis [m]. */
export interface RestingPool {
  readonly level: number;
  readonly from: number;
  readonly to: number;
  readonly volume: number;
}

/**
 * Places pools of still metal in the mesh, each with exactly its volume: the level of the pool, cut where the
 * pool ends, then shifted by the little that the cut through a mesh cell costs.
 */
export function pourIn(
  flow: Flow,
  mesh: Mesh,
  pools: readonly RestingPool[],
  sin: number,
  cos: number,
): void {
  rotateLevels(flow.levels, mesh, sin, cos);
  flow.volume.fill(0);
  for (const pool of pools) fillPool(flow, mesh, pool);
  for (let i = 0; i < mesh.cells; i++) {
    flow.level[i] = levelOf(flow.levels, mesh, i, flow.volume[i]!);
    flow.depth[i] = flow.volume[i]! / (mesh.width[i]! * (mesh.x[i + 1]! - mesh.x[i]!));
  }
}

function fillPool(flow: Flow, mesh: Mesh, pool: RestingPool): void {
  const cells: number[] = [];
  for (let i = 0; i < mesh.cells; i++) {
    const centre = (mesh.x[i]! + mesh.x[i + 1]!) / 2;
    if (centre > pool.from && centre < pool.to) cells.push(i);
  }
  const level = matchLevel(flow, mesh, cells, pool);
  for (const i of cells) flow.volume[i] = flow.volume[i]! + volumeUnder(flow.levels, mesh, i, level);
  const sum = cells.reduce((total, i) => total + volumeUnder(flow.levels, mesh, i, level), 0);
  const partly = cells.find((i) => flow.volume[i]! > 0 && flow.volume[i]! < mesh.volume[i]! * 0.999);
  if (partly !== undefined) flow.volume[partly] = flow.volume[partly]! + (pool.volume - sum);
}

function matchLevel(flow: Flow, mesh: Mesh, cells: readonly number[], pool: RestingPool): number {
  let low = Math.min(...cells.map((i) => flow.levels.z1[i]!));
  let high = Math.max(...cells.map((i) => flow.levels.z4[i]!));
  for (let k = 0; k < 200 && high - low > 0; k++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const held = cells.reduce((total, i) => total + volumeUnder(flow.levels, mesh, i, middle), 0);
    if (held < pool.volume) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The pool of metal standing behind the mouth with its front held back by the skin: the level whose wedge, cut
 * where it is `stand` deep, holds the volume. Only for a basin that is one pool; general sections use the level fill.
 */
export function singlePool(
  flow: Flow,
  mesh: Mesh,
  volume: number,
  sin: number,
  cos: number,
  stand: number,
): RestingPool {
  rotateLevels(flow.levels, mesh, sin, cos);
  let lowest = 0;
  for (let i = 0; i < mesh.mouthFace; i++) if (flow.levels.z1[i]! < flow.levels.z1[lowest]!) lowest = i;
  const reach = (level: number): { from: number; to: number } => {
    let from = lowest;
    let to = lowest;
    while (from > 0 && flow.levels.z1[from - 1]! < level) from--;
    while (to < mesh.cells - 1 && level - (mesh.x[to + 1]! * sin + mesh.sill[to + 1]! * cos) > stand * cos)
      to++;
    return { from, to };
  };
  const held = (level: number): number => {
    const { from, to } = reach(level);
    let sum = 0;
    for (let i = from; i <= to; i++) sum += volumeUnder(flow.levels, mesh, i, level);
    return sum;
  };
  let low = flow.levels.z1[lowest]!;
  let high = Math.max(...flow.levels.z4);
  for (let k = 0; k < 100; k++) {
    const middle = (low + high) / 2;
    if (held(middle) < volume) low = middle;
    else high = middle;
  }
  const { from, to } = reach(high);
  return { level: high, from: mesh.x[from]!, to: mesh.x[to + 1]!, volume };
}
