import type { Mesh } from '$src/core/mesh/mesh';
import { closedGaps } from './laps';

/** Bare floor that was never this wide between two metals [m], or not for this long [s], is no gap: film runs dry and wets again. As for fronts that meet; ours. */
export const LEAST_GAP = 20e-3;
export const LEAST_TIME = 20e-3;

/** Bare floor between metal, from look to look. */
export interface GapWatch {
  /** The mesh cells where true gaps have closed since the look before; `now` is 1 where there is metal. */
  look(time: number, now: Uint8Array): number[];
}

export function watchGaps(mesh: Mesh): GapWatch {
  const before = new Uint8Array(mesh.cells);
  /** Of the gap a cell lies in: since when the cell has been in one [s], and how wide it was at most [m]. */
  const since = new Float64Array(mesh.cells);
  const widest = new Float64Array(mesh.cells);

  function look(time: number, now: Uint8Array): number[] {
    const closed = closedGaps(before, now).filter(
      (cell) => widest[cell]! >= LEAST_GAP && time - since[cell]! >= LEAST_TIME,
    );
    let start = -1;
    for (let i = 0; i < mesh.cells; i++) {
      if (!now[i]) continue;
      if (start >= 0) keep(time, start + 1, i);
      widest[i] = 0;
      start = i;
    }
    // What lies beyond the metal at either end is no gap.
    if (start >= 0) widest.fill(0, start);
    before.set(now);
    return closed;
  }

  function keep(time: number, first: number, end: number): void {
    const width = mesh.facePlace[end]! - mesh.facePlace[first]!;
    for (let i = first; i < end; i++) {
      if (widest[i] === 0) since[i] = time;
      widest[i] = Math.max(widest[i]!, width);
    }
  }

  return { look };
}
