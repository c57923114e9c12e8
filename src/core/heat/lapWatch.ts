import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { watchGaps } from './gapWatch';
import { CONTACT_DEPTH, type Heat } from './heat';
import { freshStall, type Lap, lapWhereFrontsMeet, watchStall } from './laps';
import { cellOf, plugMean } from './plug';

/** Watches the die for laps from outside the step. */
export interface LapWatch {
  /** One look, every 2 ms: `front` is the front's place along the floor from the mouth [m], negative in the basin. */
  look(time: number, front: number): void;
  laps(): readonly Lap[];
}

/** A front this close to the die end has arrived and can no longer stall, though its last mesh cell may slope [m]. */
const ARRIVED = 1e-4;

/**
 * Laps of one pour: gaps between metal that close with a cold edge, and a front that stands still cold before the
 * die end. Reads `flow` and `heat` as they are when it looks.
 */
export function watchLaps(flow: Flow, heat: Heat, mesh: Mesh, lapTemperature: number): LapWatch {
  const gaps = watchGaps(mesh);
  const now = new Uint8Array(mesh.cells);
  const found: Lap[] = [];
  let stall = freshStall;
  let arrived = false;

  function look(time: number, front: number): void {
    for (let i = 0; i < mesh.cells; i++) now[i] = flow.depth[i]! >= CONTACT_DEPTH ? 1 : 0;
    for (const cell of gaps.look(time, now)) if (cell >= mesh.mouthFace) meet(time, cell);
    arrived ||= front >= mesh.facePlace[mesh.cells]! - ARRIVED;
    if (front > 0 && !arrived) stand(time, front);
  }

  function meet(time: number, cell: number): void {
    const place = (mesh.facePlace[cell]! + mesh.facePlace[cell + 1]!) / 2;
    const lap = lapWhereFrontsMeet(time, place, besides(heat, flow, mesh, cell), lapTemperature);
    if (lap) found.push(lap);
  }

  function stand(time: number, front: number): void {
    const step = watchStall(stall, time, front, frontTemperature(heat, flow, mesh, front), lapTemperature);
    stall = step.stall;
    if (step.lap) found.push(step.lap);
  }

  return { look, laps: () => found };
}

/** Temperatures on both sides of the cell where two fronts met [K]. */
function besides(heat: Heat, flow: Flow, mesh: Mesh, cell: number): [number, number] {
  const { temperature } = heat;
  return [
    plugMean(temperature, heat, flow, mesh, cell - 1, -1),
    plugMean(temperature, heat, flow, mesh, cell + 1, 1),
  ];
}

/** Of the metal of a plug's length behind the front [K]; NaN where none has been looked at yet. */
export function frontTemperature(heat: Heat, flow: Flow, mesh: Mesh, front: number): number {
  return plugMean(heat.temperature, heat, flow, mesh, cellOf(mesh, front), -1);
}
