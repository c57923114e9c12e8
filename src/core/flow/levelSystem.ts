import { BENDS, CHORD2, CLOSES, FIGURES, OPENS, VOLUME2, Z1, Z2, Z3, Z4 } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import { HELD, LOST_PIVOT } from './settings';

/**
 * One pass down the cells: residual of each at the present levels, and the forward half of the tridiagonal solve
 * that would remove it (Thomas algorithm; off-diagonals are −coupling). Left for `moveLevels` in `sweep` and
 * `update`. Both in one loop, because the elimination waits for its divisions and the residual costs nothing in
 * that time.
 * @returns the largest residual [m³]; for a held end, how far it is off [m]
 */
export function reduceRows(flow: Flow, mesh: Mesh): number {
  const { level, coupling, target, sweep, update, levels, activeFrom: first, activeTo: last } = flow;
  const full = mesh.volume;
  const heldRow = flow.heldStart === null ? -1 : 0;
  const heldLastRow = flow.heldEnd === null ? -1 : mesh.cells - 1;
  const lastCell = mesh.cells - 1;
  let worst = 0;
  let exact = heldRow < 0 && heldLastRow < 0;
  let pivot = 1;
  let before = 0;
  let left = coupling[first]!;
  let e = level[first]!;
  let entering = left > 0 ? left * (level[first - 1]! - e) : 0;
  for (let i = first, k = first * FIGURES; i <= last; i++, k += FIGURES) {
    let volume = 0;
    let chord = 0;
    if (e > levels[k + Z1]!) {
      const top = levels[k + Z4]!;
      if (e >= top) volume = full[i]!;
      else {
        const low = levels[k + Z2]!;
        if (e < low) {
          const rise = e - levels[k + Z1]!;
          chord = levels[k + OPENS]! * rise;
          volume = (chord * rise) / 2;
        } else if (e <= levels[k + Z3]!) {
          const rise = e - low;
          const bend = levels[k + BENDS]! * rise;
          chord = levels[k + CHORD2]! + bend;
          volume = levels[k + VOLUME2]! + (levels[k + CHORD2]! + bend / 2) * rise;
        } else {
          chord = levels[k + CLOSES]! * (top - e);
          volume = full[i]! - (chord * (top - e)) / 2;
        }
      }
    }
    const right = coupling[i + 1]!;
    const next = i < lastCell ? level[i + 1]! : e;
    const leaving = right > 0 ? right * (e - next) : 0;
    let balance = volume - target[i]! - entering + leaving;
    let diagonal = chord + left + right;
    if (diagonal <= 0) {
      balance = 0;
      diagonal = 1;
    }
    let size = balance < 0 ? -balance : balance;
    if (i === heldRow || i === heldLastRow) {
      const off = e - (i === heldRow ? flow.heldStart! : flow.heldEnd!);
      size = Math.abs(off);
      diagonal = HELD;
      balance = HELD * off;
    }
    if (size > worst) worst = size;
    const ratio = left / pivot;
    pivot = diagonal - left * ratio;
    // A run of full cells shut at both ends has no level of its own: hold its last cell.
    if (pivot <= LOST_PIVOT * diagonal) {
      pivot = diagonal;
      exact = false;
    }
    before = (left * before - balance) / pivot;
    sweep[i] = ratio;
    update[i] = before;
    left = right;
    entering = leaving;
    e = next;
  }
  flow.reducedExactly = exact;
  return worst;
}

/** The backward half: moves the levels. An update that would jump across a whole cell stops in its middle. */
export function moveLevels(flow: Flow): void {
  const { level, sweep, update, levels, activeFrom: first, activeTo: last } = flow;
  let change = 0;
  let share = 0;
  for (let i = last, k = last * FIGURES; i >= first; i--, k -= FIGURES) {
    change = update[i]! + share * change;
    share = sweep[i]!;
    const from = level[i]!;
    const to = from + change;
    const jumps =
      (from <= levels[k + Z1]! && to > levels[k + Z2]!) || (from >= levels[k + Z4]! && to < levels[k + Z3]!);
    level[i] = jumps ? (levels[k + Z2]! + levels[k + Z3]!) / 2 : to;
  }
}

/**
 * The same near the solution, with a judgement. A cell's volume is quadratic in each stretch between its corners, so as
 * long as no level passes a corner, what Newton leaves of a residual is known without another pass down the cells:
 * half the stretch's bend times the square of the change.
 * @returns true when all that is left is surely within the tolerance [m³]; false when it has to be looked at
 */
export function settleLevels(flow: Flow, tolerance: number): boolean {
  const { level, sweep, update, levels, activeFrom: first, activeTo: last } = flow;
  // Half is left for round-off, which is a thousand times less.
  const sure = tolerance / 2;
  let settled = flow.reducedExactly;
  let change = 0;
  let share = 0;
  for (let i = last, k = last * FIGURES; i >= first; i--, k -= FIGURES) {
    change = update[i]! + share * change;
    share = sweep[i]!;
    const from = level[i]!;
    let to = from + change;
    if (from <= levels[k + Z1]!) {
      if (to > levels[k + Z2]!) to = (levels[k + Z2]! + levels[k + Z3]!) / 2;
      if (!(to <= levels[k + Z1]!)) settled = false;
    } else if (from >= levels[k + Z4]!) {
      if (to < levels[k + Z3]!) to = (levels[k + Z2]! + levels[k + Z3]!) / 2;
      if (!(to >= levels[k + Z4]!)) settled = false;
    } else if (settled) {
      const low = levels[k + Z2]!;
      const high = levels[k + Z3]!;
      const square = change * change;
      if (from < low) settled = to >= levels[k + Z1]! && to <= low && levels[k + OPENS]! * square <= sure;
      else if (from > high)
        settled = to >= high && to <= levels[k + Z4]! && levels[k + CLOSES]! * square <= sure;
      else settled = to >= low && to <= high && Math.abs(levels[k + BENDS]!) * square <= sure;
    }
    level[i] = to;
  }
  return settled;
}
