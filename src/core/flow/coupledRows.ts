import { chordAt, volumeUnder } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import { gasGives, gasVolume } from './pocketGas';
import { HELD, LOST_PIVOT } from './settings';

/*
 * The rows of levelSystem.ts with one more for each pocket of shut gas, whose unknown is what the step adds to its head:
 *
 *   V_i(level_i − rise) + Σ coupling (level_i − level_neighbour) = target_i
 *   Σ V_i(level_i − rise) + volume of the gas at that rise = room of the pocket
 *
 * With the second taken the other way round both are slopes of one convex energy [m⁴]. A pocket's row stands behind that
 * of its last cell, so the forward pass carries one column more while it is in the pocket, and nothing outside.
 */

/**
 * One pass down the cells: residuals at the present levels and rises, and the forward half of the solve that would
 * remove them. Left for `keepDirection`.
 * @returns the largest residual [m³]; for a held end, how far it is off [m]
 */
export function reduceCoupled(flow: Flow, mesh: Mesh): number {
  const {
    gas,
    level,
    coupling,
    target,
    levels,
    sweep,
    update,
    column,
    activeFrom: first,
    activeTo: last,
  } = flow;
  let worst = 0;
  let pivot = 1;
  /** Forward half of the pocket's row, as far as it has come. */
  let metal = 0;
  let pocketPivot = 0;
  let pocketUpdate = 0;
  /** What the pocket just left hands on to the next cell's row. */
  let handedPivot = 0;
  let handedUpdate = 0;
  for (let i = first; i <= last; i++) {
    const k = gas === null ? -1 : gas.pocketOf[i]!;
    const isInside = k >= 0 && i > first && gas!.pocketOf[i - 1] === k;
    const left = coupling[i]!;
    const right = coupling[i + 1]!;
    const isAlone = k >= 0 && left + right === 0;
    const e = level[i]! - (k < 0 ? 0 : gas!.pockets.rise[k]!);
    const volume = isAlone ? target[i]! : volumeUnder(levels, mesh, i, e);
    const chord = isAlone ? 0 : chordAt(levels, i, e);
    let balance = volume - target[i]! + passing(level, i, left, right);
    let diagonal = chord + left + right;
    let size = Math.abs(balance);
    if (diagonal <= 0) {
      balance = size = 0;
      diagonal = 1;
    }
    const held = heldLevel(flow, mesh, i);
    if (held !== null) {
      size = Math.abs(level[i]! - held);
      diagonal = HELD;
      balance = HELD * (level[i]! - held);
    }
    if (size > worst) worst = size;
    const ratio = i > first ? left / pivot : 0;
    pivot = diagonal - left * ratio - handedPivot;
    if (pivot <= LOST_PIVOT * diagonal) pivot = diagonal;
    const own = -balance + (i > first ? ratio * update[i - 1]! : 0) + handedUpdate;
    handedPivot = handedUpdate = 0;
    sweep[i] = pivot;
    update[i] = own;
    if (k < 0) continue;
    const tie = chord + (isInside ? ratio * column[i - 1]! : 0);
    column[i] = tie;
    metal = (isInside ? metal : 0) + volume;
    pocketPivot = (isInside ? pocketPivot : 0) + chord - (tie * tie) / pivot;
    pocketUpdate = (isInside ? pocketUpdate : 0) + (tie * own) / pivot;
    if (i < last && gas!.pocketOf[i + 1] === k) continue;
    const { pockets } = gas!;
    const excess = pockets.room[k]! - gasVolume(gas!, k) - metal;
    if (Math.abs(excess) > worst) worst = Math.abs(excess);
    pockets.pivot[k] = pocketPivot + gasGives(gas!, k);
    pockets.update[k] = pocketUpdate - excess;
    if (!(pockets.pivot[k]! > 0)) pockets.pivot[k] = Number.POSITIVE_INFINITY;
    const handed = (right * tie) / pivot;
    handedPivot = (handed * handed) / pockets.pivot[k]!;
    handedUpdate = (handed * pockets.update[k]!) / pockets.pivot[k]!;
  }
  return worst;
}

/** Level that an end of the section is held at; null for all other cells. */
function heldLevel({ heldStart, heldEnd }: Flow, { cells }: Mesh, i: number): number | null {
  if (i === 0) return heldStart;
  return i === cells - 1 ? heldEnd : null;
}

function passing(level: Float64Array, i: number, left: number, right: number): number {
  const leaving = right > 0 ? right * (level[i]! - level[i + 1]!) : 0;
  return left > 0 ? leaving + left * (level[i]! - level[i - 1]!) : leaving;
}

/** The backward half: the change of each level and rise that would solve the rows lands in `direction`. */
export function keepDirection(flow: Flow): void {
  const { gas, coupling, sweep, update, column, direction, activeFrom: first, activeTo: last } = flow;
  let change = 0;
  for (let i = last; i >= first; i--) {
    const k = gas === null ? -1 : gas.pocketOf[i]!;
    const right = i < last ? coupling[i + 1]! : 0;
    let sum = update[i]! + right * change;
    if (k >= 0) {
      const { pockets } = gas!;
      const isLast = i === last || gas!.pocketOf[i + 1] !== k;
      if (isLast) {
        const handed = (right * column[i]!) / sweep[i]!;
        pockets.direction[k] = (pockets.update[k]! + handed * change) / pockets.pivot[k]!;
      }
      sum += column[i]! * pockets.direction[k]!;
    }
    change = sum / sweep[i]!;
    // Metal in a pocket that nothing passes to stands as it stood, under whatever pressure.
    direction[i] = k >= 0 && coupling[i]! + coupling[i + 1]! === 0 ? gas!.pockets.direction[k]! : change;
  }
}

/** Notes where a search begins. */
export function keepTrial({ gas, trial, level }: Flow): void {
  trial.set(level);
  gas?.pockets.trial.set(gas.pockets.rise);
}

/** Levels and rises at that share of the direction from the trial. */
export function moveTo({ gas, level, trial, direction, activeFrom, activeTo }: Flow, share: number): void {
  for (let i = activeFrom; i <= activeTo; i++) level[i] = trial[i]! + share * direction[i]!;
  if (!gas) return;
  const { pockets } = gas;
  for (let k = 0; k < pockets.count; k++) pockets.rise[k] = pockets.trial[k]! + share * pockets.direction[k]!;
}

/** Slope of the energy along the direction, where levels and rises are now [m⁴]. Held ends stand where they are to: they add none. */
export function slopeAlong(flow: Flow, mesh: Mesh): number {
  const { gas, level, direction, coupling, target, levels } = flow;
  let slope = 0;
  if (gas)
    for (let k = 0; k < gas.pockets.count; k++)
      slope += (gas.pockets.room[k]! - gasVolume(gas, k)) * gas.pockets.direction[k]!;
  for (let i = flow.activeFrom; i <= flow.activeTo; i++) {
    if (heldLevel(flow, mesh, i) !== null) continue;
    const k = gas === null ? -1 : gas.pocketOf[i]!;
    const isAlone = k >= 0 && coupling[i]! + coupling[i + 1]! === 0;
    const e = level[i]! - (k < 0 ? 0 : gas!.pockets.rise[k]!);
    const volume = isAlone ? target[i]! : volumeUnder(levels, mesh, i, e);
    const balance = volume - target[i]! + passing(level, i, coupling[i]!, coupling[i + 1]!);
    slope += balance * direction[i]!;
    if (k >= 0) slope -= volume * gas!.pockets.direction[k]!;
  }
  return slope;
}
