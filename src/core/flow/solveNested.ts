import { CHORD2, CHORD3, FIGURES, Z1, Z2, Z3, Z4 } from '$src/core/mesh/levels';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Flow } from './flow';
import { reduceRows, solveTridiagonal } from './levelSystem';

const OUTER_CAP = 200;
const INNER_CAP = 200;

/**
 * Level solve that always ends: the volume is split into two convex parts V1 − V2, V2 is linearised in the outer
 * iteration and V1 solved by Newton in the inner one, both monotone.
 * Source: Casulli & Zanolli 2012, Linear Algebra and its Applications (nested Newton; from memory).
 */
export function solveNested(flow: Flow, mesh: Mesh, tolerance: number): boolean {
  const { level, trial, levels } = flow;
  const { activeFrom: first, activeTo: last } = flow;
  for (let i = first; i <= last; i++) level[i] = Math.min(level[i]!, peakLevel(flow, i));
  for (let outer = 0; outer < OUTER_CAP; outer++) {
    trial.set(level);
    lineariseRest(flow, mesh);
    for (let i = first; i <= last; i++) level[i] = Math.max(level[i]!, levels[i * FIGURES + Z3]!);
    for (let inner = 0; inner < INNER_CAP; inner++) {
      if (assembleInner(flow) <= tolerance) break;
      solveTridiagonal(flow);
      for (let i = first; i <= last; i++) level[i] = level[i]! + flow.update[i]!;
      flow.newtonIterations++;
    }
    if (reduceRows(flow, mesh) <= tolerance) return true;
  }
  return false;
}

/** The figures of a cell by name: nested solves are few, and may take their time. */
function storageOf({ levels }: Flow, i: number) {
  const k = i * FIGURES;
  return {
    z1: levels[k + Z1]!,
    z2: levels[k + Z2]!,
    z3: levels[k + Z3]!,
    z4: levels[k + Z4]!,
    chord2: levels[k + CHORD2]!,
    chord3: levels[k + CHORD3]!,
  };
}

/** Where the chord is longest: up to here the volume is convex. */
function peakLevel(flow: Flow, i: number): number {
  const { z2, z3, chord2, chord3 } = storageOf(flow, i);
  return chord3 >= chord2 ? z3 : z2;
}

/** What V2 holds at the levels of the outer iteration, and its chord there. */
function lineariseRest(flow: Flow, mesh: Mesh): void {
  const { trial, restVolume, restChord } = flow;
  for (let i = flow.activeFrom; i <= flow.activeTo; i++) {
    const before = trial[i]!;
    restVolume[i] = convexPart(flow, i, before) - volumeAt(flow, mesh, i, before);
    restChord[i] = convexChord(flow, i, before) - chordAt(flow, i, before);
  }
}

function assembleInner(flow: Flow): number {
  const { level, trial, coupling, target, residual, diagonal, restVolume, restChord } = flow;
  let worst = 0;
  for (let i = flow.activeFrom; i <= flow.activeTo; i++) {
    const e = level[i]!;
    const convex = convexPart(flow, i, e);
    const chordConvex = convexChord(flow, i, e);
    const rest = restChord[i]!;
    const left = coupling[i]!;
    const right = coupling[i + 1]!;
    let balance = convex - restVolume[i]! - rest * (e - trial[i]!) - target[i]!;
    if (left > 0) balance += left * (e - level[i - 1]!);
    if (right > 0) balance += right * (e - level[i + 1]!);
    const total = chordConvex - rest + left + right;
    residual[i] = total > 0 ? balance : 0;
    diagonal[i] = total > 0 ? total : 1;
    if (total > 0) worst = Math.max(worst, Math.abs(balance));
  }
  return worst;
}

function chordAt(flow: Flow, i: number, e: number): number {
  const { z1, z2, z3, z4, chord2, chord3 } = storageOf(flow, i);
  if (e <= z1 || e >= z4) return 0;
  if (e < z2) return (chord2 * (e - z1)) / (z2 - z1);
  if (e > z3) return (chord3 * (z4 - e)) / (z4 - z3);
  return z3 > z2 ? chord2 + ((chord3 - chord2) * (e - z2)) / (z3 - z2) : chord2;
}

function volumeAt(flow: Flow, mesh: Mesh, i: number, e: number): number {
  const { z1, z2, z3, z4, chord2, chord3 } = storageOf(flow, i);
  if (e <= z1) return 0;
  if (e >= z4) return mesh.volume[i]!;
  if (e < z2) return (chordAt(flow, i, e) * (e - z1)) / 2;
  if (e > z3) return mesh.volume[i]! - (chord3 * (z4 - e) ** 2) / (2 * (z4 - z3));
  return (chord2 * (z2 - z1)) / 2 + ((chord2 + chordAt(flow, i, e)) * (e - z2)) / 2;
}

function convexChord(flow: Flow, i: number, e: number): number {
  const peak = peakLevel(flow, i);
  if (e < peak) return chordAt(flow, i, e);
  const { chord2, chord3 } = storageOf(flow, i);
  return Math.max(chord2, chord3);
}

function convexPart(flow: Flow, i: number, e: number): number {
  const { z1, z2, z3, chord2, chord3 } = storageOf(flow, i);
  const peak = peakLevel(flow, i);
  const most = Math.max(chord2, chord3);
  const low = (chord2 * (z2 - z1)) / 2;
  if (e >= peak) {
    const atPeak = chord3 >= chord2 ? low + ((chord2 + chord3) * (z3 - z2)) / 2 : low;
    return atPeak + most * (e - peak);
  }
  if (e <= z1) return 0;
  if (e < z2) return (chordAt(flow, i, e) * (e - z1)) / 2;
  return low + ((chord2 + chordAt(flow, i, e)) * (e - z2)) / 2;
}
