import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { coolingTime } from './cooling';
import { enthalpyAtSolidFraction } from './enthalpy';
import type { Heat } from './heat';
import { cellOf, plugMean } from './plug';
import { modulusAbout } from './regionModulus';

/**
 * Time [s] that the metal of a plug's length up to a mesh cell has left before it is too stiff to run, from the heat it
 * still carries: still metal that fills its section there. 0 when it is stiff already, Infinity where the die is too hot for it.
 */
export function timeLeft(heat: Heat, flow: Flow, mesh: Mesh, cell: number): number {
  const { freezing, enthalpy, transfer, dieTemperature } = heat;
  const rate = transfer[cell]! / (freezing.density * modulusAbout(heat, mesh, cell));
  const stiff = enthalpyAtSolidFraction(freezing, freezing.coherency);
  return coolingTime(
    freezing,
    plugMean(enthalpy, heat, flow, mesh, cell, -1),
    stiff,
    rate,
    dieTemperature[cell]!,
  );
}

/** Keeps the least time that metal in the die had left, at the front on its way and wherever a place became full. */
export interface TimeLeftWatch {
  /** One look, every 2 ms: `front` from the mouth [m], null once it has arrived. */
  look(front: number | null): void;
  /** [s]; Infinity before there is metal in the die. */
  least(): number;
}

export function watchTimeLeft(flow: Flow, heat: Heat, mesh: Mesh): TimeLeftWatch {
  const wasFull = new Uint8Array(mesh.cells);
  let least = Number.POSITIVE_INFINITY;

  function note(cell: number): void {
    const left = timeLeft(heat, flow, mesh, cell);
    // Not a number where there is no metal yet.
    if (left < least) least = left;
  }

  function look(front: number | null): void {
    if (front !== null && front > 0) note(cellOf(mesh, front));
    for (let i = mesh.mouthFace; i < mesh.cells; i++) {
      if (wasFull[i] || mesh.open[i] || !(heat.fullTime[i]! >= 0)) continue;
      wasFull[i] = 1;
      note(i);
    }
  }

  return { look, least: () => least };
}
