import type { Flow } from '$src/core/flow/flow';
import { DRY_DEPTH } from '$src/core/flow/settings';
import type { Mesh } from '$src/core/mesh/mesh';
import { cellSpeed, type Sample } from '$src/core/watch/sample';
import { fieldOf } from './fields';
import { figuresOf } from './figuresOf';
import type { PourPlan } from './plan';
import { planHash } from './planHash';
import type { MeshOutline, Outcome, PourRecord } from './record';
import type { Watchers } from './watchers';

/** Looks between two frames (20 ms) and between two values of a series (10 ms). */
const LOOKS_PER_FRAME = 10;
const LOOKS_PER_VALUE = 5;

/** Keeps what the looks saw and makes the record of it. */
export interface Recorder {
  look(sample: Sample, watchers: Watchers): void;
  finish(
    outcome: Outcome,
    watchers: Watchers,
    work: { flow: Flow; volumeDrift: number; greatestSpeed: number },
  ): PourRecord;
}

export function makeRecorder(plan: PourPlan, mesh: Mesh, solver: string): Recorder {
  const series = {
    time: [] as number[],
    inclination: [] as number[],
    front: [] as number[],
    filledShare: [] as number[],
    spilled: [] as number[],
    skinFolded: [] as number[],
  };
  const frames = {
    time: [] as number[],
    inclination: [] as number[],
    level: [] as Float32Array[],
    depth: [] as Float32Array[],
    speed: [] as Float32Array[],
  };
  let looks = 0;

  function look(sample: Sample, watchers: Watchers): void {
    if (looks % LOOKS_PER_VALUE === 0) {
      series.time.push(sample.time);
      series.inclination.push(sample.inclination);
      series.front.push(sample.frontAlongAxis);
      series.filledShare.push(watchers.fill.share());
      series.spilled.push(sample.flow.spilled);
      series.skinFolded.push(watchers.contraction.folded());
    }
    if (looks % LOOKS_PER_FRAME === 0) keepFrame(frames, sample);
    looks++;
  }

  function finish(
    outcome: Outcome,
    watchers: Watchers,
    work: { flow: Flow; volumeDrift: number; greatestSpeed: number },
  ): PourRecord {
    const frontSpeeds = watchers.front.frontSpeeds();
    const { flow } = work;
    const folds = watchers.all.flatMap((watcher) => watcher.folds()).sort((a, b) => a.time - b.time);
    return {
      solver,
      planHash: planHash(plan),
      plan,
      outcome,
      outline: outlineOf(mesh),
      frames: {
        time: Float64Array.from(frames.time),
        inclination: Float64Array.from(frames.inclination),
        level: fieldOf(frames.level, mesh.cells),
        depth: fieldOf(frames.depth, mesh.cells),
        speed: fieldOf(frames.speed, mesh.cells),
      },
      series: {
        time: Float64Array.from(series.time),
        inclination: Float64Array.from(series.inclination),
        front: Float64Array.from(series.front),
        filledShare: Float64Array.from(series.filledShare),
        spilled: Float64Array.from(series.spilled),
        skinFolded: Float64Array.from(series.skinFolded),
      },
      frontSpeeds,
      figures: figuresOf(plan, watchers, folds, flow, mesh),
      folds,
      band: null,
      health: {
        steps: flow.steps,
        newtonIterations: flow.newtonIterations,
        nestedSolves: flow.nestedSolves,
        volumeDrift: work.volumeDrift,
        greatestSpeed: work.greatestSpeed,
      },
    };
  }

  return { look, finish };
}

function keepFrame(
  frames: {
    time: number[];
    inclination: number[];
    level: Float32Array[];
    depth: Float32Array[];
    speed: Float32Array[];
  },
  sample: Sample,
): void {
  const { flow, mesh } = sample;
  frames.time.push(sample.time);
  frames.inclination.push(sample.inclination);
  frames.level.push(levelsToKeep(flow));
  frames.depth.push(new Float32Array(flow.depth));
  frames.speed.push(speedsToKeep(flow, mesh.cells));
}

/** Level of the metal's surface, without the lift that gas gives it; NaN where there is none. */
function levelsToKeep({ level, depth, gas }: Flow): Float32Array {
  const kept = new Float32Array(level.length).fill(Number.NaN);
  for (let i = 0; i < kept.length; i++)
    if (depth[i]! > DRY_DEPTH) kept[i] = level[i]! - (gas ? gas.head[i]! : 0);
  return kept;
}

function speedsToKeep(flow: Flow, cells: number): Float32Array {
  const kept = new Float32Array(cells);
  for (let i = 0; i < cells; i++) kept[i] = cellSpeed(flow, i);
  return kept;
}

function outlineOf(mesh: Mesh): MeshOutline {
  const { x, floorLeft, floorRight, roofLeft, roofRight, open } = mesh;
  return {
    x: x.slice(),
    floorLeft: floorLeft.slice(),
    floorRight: floorRight.slice(),
    roofLeft: roofLeft.slice(),
    roofRight: roofRight.slice(),
    open: open.slice(),
  };
}
