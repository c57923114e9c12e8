import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';

/** Weight that makes the row of a held level outweigh its neighbours. */
const HELD = 1e9;
const LOST_PIVOT = 1e-13;

/**
 * One pass down the cells: residual of each at the present levels, and the forward half of the tridiagonal solve
 * that would remove it (Thomas algorithm; off-diagonals are −coupling). Left for `moveLevels` in `sweep` and
 * `update`. Both in one loop, because the elimination waits for its divisions and the residual costs nothing in
 * that time.
 * @returns the largest residual [m³]; for a held end, how far it is off [m]
 */
export function reduceRows(flow: Flow, mesh: Mesh): number {
  const { level, coupling, target, sweep, update, levels, activeFrom: first, activeTo: last } = flow;
  const { z1, z2, z3, z4, chord2, volume2, opens, bends, closes } = levels;
  const full = mesh.volume;
  const heldStart = flow.heldStart ?? Number.NaN;
  const heldEnd = flow.heldEnd ?? Number.NaN;
  const lastCell = mesh.cells - 1;
  let worst = 0;
  let pivot = 1;
  let before = 0;
  let left = coupling[first]!;
  for (let i = first; i <= last; i++) {
    const e = level[i]!;
    let volume = 0;
    let chord = 0;
    if (e > z1[i]!) {
      const top = z4[i]!;
      if (e >= top) volume = full[i]!;
      else {
        const low = z2[i]!;
        if (e < low) {
          chord = opens[i]! * (e - z1[i]!);
          volume = (chord * (e - z1[i]!)) / 2;
        } else if (e <= z3[i]!) {
          const rise = e - low;
          const bend = bends[i]! * rise;
          chord = chord2[i]! + bend;
          volume = volume2[i]! + (chord2[i]! + bend / 2) * rise;
        } else {
          chord = closes[i]! * (top - e);
          volume = full[i]! - (chord * (top - e)) / 2;
        }
      }
    }
    const right = coupling[i + 1]!;
    let balance = volume - target[i]!;
    if (left > 0) balance += left * (e - level[i - 1]!);
    if (right > 0) balance += right * (e - level[i + 1]!);
    let diagonal = chord + left + right;
    if (diagonal <= 0) {
      balance = 0;
      diagonal = 1;
    }
    let size = balance < 0 ? -balance : balance;
    const held = i === 0 ? heldStart : i === lastCell ? heldEnd : Number.NaN;
    if (!Number.isNaN(held)) {
      size = Math.abs(e - held);
      diagonal = HELD;
      balance = HELD * (e - held);
    }
    if (size > worst) worst = size;
    const ratio = left / pivot;
    pivot = diagonal - left * ratio;
    // A run of full cells shut at both ends has no level of its own: hold its last cell.
    if (pivot <= LOST_PIVOT * diagonal) pivot = diagonal;
    before = (left * before - balance) / pivot;
    sweep[i] = ratio;
    update[i] = before;
    left = right;
  }
  return worst;
}

/** A run of full cells shut at both ends has no level of its own: its last cell is held. */
function pivotAfter(diagonal: number, off: number, ratio: number): number {
  const pivot = diagonal - off * ratio;
  return pivot <= LOST_PIVOT * diagonal ? diagonal : pivot;
}

/** The backward half: moves the levels. An update that would jump across a whole cell stops in its middle. */
export function moveLevels(flow: Flow): void {
  const { level, sweep, update, levels, activeFrom: first, activeTo: last } = flow;
  const { z1, z2, z3, z4 } = levels;
  let change = 0;
  let share = 0;
  for (let i = last; i >= first; i--) {
    change = update[i]! + share * change;
    share = sweep[i]!;
    const from = level[i]!;
    const to = from + change;
    const jumps = (from <= z1[i]! && to > z2[i]!) || (from >= z4[i]! && to < z3[i]!);
    level[i] = jumps ? (z2[i]! + z3[i]!) / 2 : to;
  }
}

/** Solves the tridiagonal system of `residual` and `diagonal`; the change of level lands in `update`. */
export function solveTridiagonal(flow: Flow): void {
  const { coupling, residual, diagonal, sweep, update, activeFrom: first, activeTo: last } = flow;
  let pivot = diagonal[first]!;
  update[first] = -residual[first]! / pivot;
  for (let i = first + 1; i <= last; i++) {
    const off = coupling[i]!;
    const ratio = off / pivot;
    sweep[i] = ratio;
    pivot = pivotAfter(diagonal[i]!, off, ratio);
    update[i] = (-residual[i]! + off * update[i - 1]!) / pivot;
  }
  for (let i = last - 1; i >= first; i--) update[i] = update[i]! + sweep[i + 1]! * update[i + 1]!;
}
