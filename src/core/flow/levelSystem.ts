import type { Mesh } from '$src/core/mesh/mesh';
import { holdRows } from './ends';
import type { Flow } from './flow';

/** Residual and diagonal at the present levels; returns the largest residual [m³]. */
export function assemble(flow: Flow, mesh: Mesh): number {
  const { level, coupling, target, residual, diagonal, levels } = flow;
  const { z1, z2, z3, z4, chord2, volume2, opens, bends, closes } = levels;
  const full = mesh.volume;
  const cells = mesh.cells;
  const { activeFrom, activeTo } = flow;
  let worst = 0;
  for (let i = activeFrom; i <= activeTo; i++) {
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
    const left = coupling[i]!;
    const right = coupling[i + 1]!;
    let balance = volume - target[i]!;
    if (left > 0) balance += left * (e - level[i - 1]!);
    if (right > 0) balance += right * (e - level[i + 1]!);
    const total = chord + left + right;
    residual[i] = total > 0 ? balance : 0;
    diagonal[i] = total > 0 ? total : 1;
    const size = balance < 0 ? -balance : balance;
    if (
      size > worst &&
      total > 0 &&
      !(i === 0 && flow.heldStart !== null) &&
      !(i === cells - 1 && flow.heldEnd !== null)
    )
      worst = size;
  }
  if (flow.heldStart !== null || flow.heldEnd !== null) {
    if (flow.heldStart !== null) worst = Math.max(worst, Math.abs(level[0]! - flow.heldStart));
    if (flow.heldEnd !== null) worst = Math.max(worst, Math.abs(level[cells - 1]! - flow.heldEnd));
    holdRows(flow, cells);
  }
  return worst;
}

const LOST_PIVOT = 1e-13;

/** Thomas algorithm; off-diagonals are −coupling; the solution, minus the residual solved, lands in `update`. */
export function solveTridiagonal(flow: Flow): void {
  const { coupling, residual, diagonal, sweep, update, activeFrom: first, activeTo: last } = flow;
  let pivot = diagonal[first]!;
  update[first] = -residual[first]! / pivot;
  for (let i = first + 1; i <= last; i++) {
    const off = coupling[i]!;
    const ratio = off / pivot;
    sweep[i] = ratio;
    pivot = diagonal[i]! - off * ratio;
    // A run of full cells shut at both ends has no level of its own: hold its last cell.
    if (pivot <= LOST_PIVOT * diagonal[i]!) pivot = diagonal[i]!;
    update[i] = (-residual[i]! + off * update[i - 1]!) / pivot;
  }
  for (let i = last - 1; i >= first; i--) update[i] = update[i]! + sweep[i + 1]! * update[i + 1]!;
}
