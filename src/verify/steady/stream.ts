import type { Conditions, End, FrictionLaw } from '$src/core/flow/conditions';
import { GRAVITY } from '$src/core/gravity';
import { type CaseRun, fillDepth, runTo, setSpeed, startCase } from '../caseRun';
import { channelSection } from '../channel';
import type { Plot } from '../check';
import { criticalDepth } from '../exact/steady';
import { atLeast, atMost, type Finding } from '../finding';
import { centres, depthError, fittedOrder, settleDepths } from '../measure';

/** A steady stream: what enters, how it leaves, and what its depth should be. */
export interface Stream {
  readonly length: number;
  readonly cells: number;
  readonly discharge: number;
  /** Lengths are stretched by this, so that slopes are gentle and floor and axis one; depths keep. */
  readonly stretch: number;
  readonly friction?: FrictionLaw;
  bed?(x: number): number;
  width?(x: number): number;
  depth(x: number): number;
  /** Depth held at the outlet, or a free fast outlet. */
  readonly outlet: 'held' | 'free';
  /** Times that the stream could have passed the channel at critical speed. */
  readonly passes: number;
  /** Share of the ordinary step (half a mesh cell a step). */
  readonly stepShare?: number;
}

export function settle(stream: Stream): CaseRun {
  const { length, cells, discharge, stretch, width } = stream;
  const bed = stream.bed;
  const depthAt = (x: number) => stream.depth(x / stretch);
  const bedAt = (x: number) => bed?.(x / stretch) ?? 0;
  const lastCentre = length * stretch * (1 - 0.5 / cells);
  const end: End = {
    kind: 'level',
    level: bedAt(lastCentre) + depthAt(lastCentre),
    ...(stream.outlet === 'free' ? { whileSubcritical: true } : {}),
  };
  const conditions: Conditions = {
    friction: stream.friction ?? { kind: 'none' },
    start: { kind: 'inflow', discharge },
    end,
  };
  const deepest = Math.max(
    ...Array.from(
      { length: 101 },
      (_, k) => stream.depth((length * k) / 100) + (bed?.((length * k) / 100) ?? 0),
    ),
  );
  const celerity = Math.sqrt(GRAVITY * criticalDepth(discharge / (width?.(length / 2) ?? 1)));
  const run = startCase({
    section: channelSection({
      length: length * stretch,
      cells,
      ...(bed ? { bed: bedAt } : {}),
      ...(width ? { width: (x: number) => width(x / stretch) } : {}),
      roof: 3 * deepest,
    }),
    meshCells: cells,
    conditions,
    longestStep: ((stream.stepShare ?? 1) * 0.5 * length * stretch) / cells / celerity,
  });
  fillDepth(run, depthAt);
  setSpeed(run, (x) => discharge / ((width?.(x / stretch) ?? 1) * depthAt(x)));
  run.flow.flux[0] = discharge;
  run.flow.flux[cells] = discharge;
  runTo(run, (stream.passes * length * stretch) / celerity);
  settleDepths(run);
  return run;
}

export const errorOf = (run: CaseRun, stream: Stream, from = 0): number =>
  depthError(run, (x) => stream.depth(x / stream.stretch), from * stream.stretch);

export function dischargeSpread(run: CaseRun, discharge: number, from = 1): number {
  let most = 0;
  for (let j = from; j < run.mesh.cells; j++)
    most = Math.max(most, Math.abs(run.flow.flux[j]! / discharge - 1));
  return most;
}

export function plotOf(name: string, title: string, run: CaseRun, stream: Stream): Plot {
  const x = centres(run).map((place) => place / stream.stretch);
  const bed = (place: number) => stream.bed?.(place) ?? 0;
  return {
    name,
    title,
    xLabel: 'place, m',
    yLabel: 'level, m',
    curves: [
      ...(stream.bed ? [{ name: 'floor', x, y: x.map(bed), look: 'line' as const }] : []),
      { name: 'exact', x, y: x.map((place) => bed(place) + stream.depth(place)), look: 'line' },
      { name: 'computed', x, y: x.map((place, i) => bed(place) + run.flow.depth[i]!), look: 'marks' },
    ],
  };
}

interface Grade {
  readonly meshes: readonly number[];
  /** Bars on the relative L1 of depth by mesh. */
  readonly errors: readonly number[];
  readonly order: number;
  readonly spread: number;
  readonly from?: number;
}

/** Errors over a ladder of meshes, their order, and how even the discharge is on the finest. */
export function climb(
  make: (cells: number) => Stream,
  grade: Grade,
): { findings: Finding[]; runs: CaseRun[]; streams: Stream[] } {
  const streams = grade.meshes.map(make);
  const runs = streams.map(settle);
  const errors = runs.map((run, k) => errorOf(run, streams[k]!, grade.from));
  const last = runs.length - 1;
  return {
    runs,
    streams,
    findings: [
      ...errors.map((error, k) =>
        atMost(`relative L1 of depth, ${grade.meshes[k]} cells`, error, grade.errors[k]!),
      ),
      atLeast('observed order, fitted', fittedOrder(grade.meshes, errors), grade.order),
      atMost(
        `unevenness of the discharge, ${grade.meshes[last]} cells`,
        dischargeSpread(runs[last]!, streams[last]!.discharge),
        grade.spread,
      ),
    ],
  };
}

/** What the ordinary step does to a long fast stream. */
export const RIPPLES =
  'at half a mesh cell a step the limited slopes of the explicit advection still ripple a little, by a thousandth of the discharge here and 7 thousandths in A09c on 400 cells; at a quarter of the step by a third of that';
