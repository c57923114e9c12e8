import type { Flow } from '$src/core/flow/flow';
import { DRY_DEPTH } from '$src/core/flow/settings';
import type { Mesh } from '$src/core/mesh/mesh';
import { aroundHeldGas } from '$src/core/watch/aroundHeldGas';
import { cellSpeed, type Sample } from '$src/core/watch/sample';
import { addRow, fieldOf, type GrowingField, makeField } from './fields';
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
    level: makeField(mesh.cells),
    depth: makeField(mesh.cells),
    speed: makeField(mesh.cells),
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
    const seen = watchers.all.flatMap((watcher) => watcher.folds()).sort((a, b) => a.time - b.time);
    const folds = (flow.gas?.heldVolume ?? 0) > 0 ? aroundHeldGas(seen) : seen;
    return {
      solver,
      planHash: planHash(plan),
      plan,
      outcome,
      outline: outlineOf(mesh),
      frames: {
        time: Float64Array.from(frames.time),
        inclination: Float64Array.from(frames.inclination),
        level: fieldOf(frames.level),
        depth: fieldOf(frames.depth),
        speed: fieldOf(frames.speed),
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
        searchedSolves: flow.searchedSolves,
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
    level: GrowingField;
    depth: GrowingField;
    speed: GrowingField;
  },
  sample: Sample,
): void {
  const { flow, mesh } = sample;
  frames.time.push(sample.time);
  frames.inclination.push(sample.inclination);
  keepLevels(frames.level, flow);
  const start = addRow(frames.depth);
  frames.depth.data.set(flow.depth, start);
  keepSpeeds(frames.speed, flow, mesh.cells);
}

/** Level of the metal's surface, without the lift that gas gives it; NaN where there is none. */
function keepLevels(field: GrowingField, { level, depth, gas }: Flow): void {
  const start = addRow(field);
  const { data } = field;
  for (let i = 0; i < level.length; i++)
    data[start + i] = depth[i]! > DRY_DEPTH ? level[i]! - (gas ? gas.head[i]! : 0) : Number.NaN;
}

function keepSpeeds(field: GrowingField, flow: Flow, cells: number): void {
  const start = addRow(field);
  const { data } = field;
  for (let i = 0; i < cells; i++) data[start + i] = cellSpeed(flow, i);
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
