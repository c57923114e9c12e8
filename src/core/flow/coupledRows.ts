import { chordAt, volumeUnder } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import type { Gas } from './gas';
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

/** Row of one cell as it stands; scratch, since a pass allocates nothing. */
const row = { volume: 0, chord: 0, left: 0, right: 0, balance: 0, diagonal: 1, size: 0 };
/** Row of the pocket that a pass is in, as far as it has come, and what a pocket just left hands on to the next cell. */
const pocket = { metal: 0, pivot: 0, update: 0, handedPivot: 0, handedUpdate: 0, size: 0 };

/**
 * One pass down the cells: residuals at the present levels and rises, and the forward half of the solve that would
 * remove them. Left for `keepDirection`.
 * @returns the largest residual [m³]; for a held end, how far it is off [m]
 */
export function reduceCoupled(flow: Flow, mesh: Mesh): number {
  const { sweep, update, column, activeFrom: first, activeTo: last } = flow;
  let worst = 0;
  let pivot = 1;
  pocket.handedPivot = pocket.handedUpdate = 0;
  for (let i = first; i <= last; i++) {
    const k = pocketAt(flow, i);
    setRow(flow, mesh, i, k);
    if (row.size > worst) worst = row.size;
    const ratio = i > first ? row.left / pivot : 0;
    pivot = row.diagonal - row.left * ratio - pocket.handedPivot;
    // A run of full cells shut at both ends has no level of its own: its last cell is held.
    if (pivot <= LOST_PIVOT * row.diagonal) pivot = row.diagonal;
    update[i] = pocket.handedUpdate - row.balance + (i > first ? ratio * update[i - 1]! : 0);
    sweep[i] = pivot;
    pocket.handedPivot = pocket.handedUpdate = 0;
    if (k < 0) continue;
    const isInside = i > first && pocketAt(flow, i - 1) === k;
    column[i] = row.chord + (isInside ? ratio * column[i - 1]! : 0);
    addToPocket(flow, i, isInside);
    if (i < last && pocketAt(flow, i + 1) === k) continue;
    closePocket(flow.gas!, k, column[i]! / pivot);
    if (pocket.size > worst) worst = pocket.size;
  }
  return worst;
}

const pocketAt = ({ gas }: Flow, i: number): number => (gas === null ? -1 : gas.pocketOf[i]!);

function setRow(flow: Flow, mesh: Mesh, i: number, k: number): void {
  const { level, coupling, target } = flow;
  row.left = coupling[i]!;
  row.right = coupling[i + 1]!;
  setMetal(flow, mesh, i, k);
  row.balance = row.volume - target[i]! + passing(level, i, row.left, row.right);
  row.diagonal = row.chord + row.left + row.right;
  if (row.diagonal <= 0) {
    row.balance = 0;
    row.diagonal = 1;
  }
  row.size = Math.abs(row.balance);
  const held = heldLevel(flow, mesh, i);
  if (held === null) return;
  row.size = Math.abs(level[i]! - held);
  row.diagonal = HELD;
  row.balance = HELD * (level[i]! - held);
}

/** Metal in a cell at its present level, and its chord. In a pocket, metal that nothing passes to stays as it is. */
function setMetal({ gas, level, levels, target }: Flow, mesh: Mesh, i: number, k: number): void {
  const isAlone = k >= 0 && row.left + row.right === 0;
  const surface = k < 0 ? level[i]! : level[i]! - gas!.pockets.rise[k]!;
  row.volume = isAlone ? target[i]! : volumeUnder(levels, mesh, i, surface);
  row.chord = isAlone ? 0 : chordAt(levels, i, surface);
}

function addToPocket({ sweep, update, column }: Flow, i: number, isInside: boolean): void {
  if (!isInside) pocket.metal = pocket.pivot = pocket.update = 0;
  const tie = column[i]! / sweep[i]!;
  pocket.metal += row.volume;
  pocket.pivot += row.chord - tie * column[i]!;
  pocket.update += tie * update[i]!;
}

/** The pocket's own row, behind that of its last cell. `tie` is what that cell's level follows its rise by. */
function closePocket(gas: Gas, k: number, tie: number): void {
  const { pockets } = gas;
  const excess = pockets.room[k]! - gasVolume(gas, k) - pocket.metal;
  pocket.size = Math.abs(excess);
  const pivot = pocket.pivot + gasGives(gas, k);
  pockets.pivot[k] = pivot > 0 ? pivot : Number.POSITIVE_INFINITY;
  pockets.update[k] = pocket.update - excess;
  const handed = row.right * tie;
  pocket.handedPivot = (handed * handed) / pockets.pivot[k]!;
  pocket.handedUpdate = (handed * pockets.update[k]!) / pockets.pivot[k]!;
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
    const k = pocketAt(flow, i);
    const right = i < last ? coupling[i + 1]! : 0;
    let sum = update[i]! + right * change;
    if (k >= 0) {
      const { pockets } = gas!;
      if (i === last || pocketAt(flow, i + 1) !== k)
        pockets.direction[k] =
          (pockets.update[k]! + ((right * column[i]!) / sweep[i]!) * change) / pockets.pivot[k]!;
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
  const { gas, direction } = flow;
  let slope = 0;
  if (gas)
    for (let k = 0; k < gas.pockets.count; k++)
      slope += (gas.pockets.room[k]! - gasVolume(gas, k)) * gas.pockets.direction[k]!;
  for (let i = flow.activeFrom; i <= flow.activeTo; i++) {
    if (heldLevel(flow, mesh, i) !== null) continue;
    const k = pocketAt(flow, i);
    setRow(flow, mesh, i, k);
    slope += row.balance * direction[i]!;
    if (k >= 0) slope -= row.volume * gas!.pockets.direction[k]!;
  }
  return slope;
}
