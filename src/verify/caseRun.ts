import { advance, largestOrdinaryCell, stepLength } from '$src/core/flow/advance';
import type { Conditions } from '$src/core/flow/conditions';
import { Flow } from '$src/core/flow/flow';
import { type Forces, frontResistance } from '$src/core/flow/forces';
import { COURANT, DRAG, TIME_WEIGHT } from '$src/core/flow/settings';
import { GRAVITY } from '$src/core/gravity';
import type { StandingLiquid } from '$src/core/level/stand';
import { levelOf, rotateLevels, volumeUnder } from '$src/core/mesh/levels';
import { buildMesh, type Mesh } from '$src/core/mesh/mesh';
import { mirrorMesh } from '$src/core/mesh/mirror';
import type { Section } from '$src/core/section/section';

/** How the body lies in time; rate and acceleration enter only as the forces of a turning frame. */
export interface BodyMotion {
  inclinationAt(time: number): number;
  rateAt(time: number): number;
  accelerationAt(time: number): number;
}

export interface CaseSetup {
  readonly section: Section;
  readonly meshCells: number;
  /** Fixed inclination [rad], also past the upright, or a motion above −90°; level when absent. */
  readonly inclination?: number;
  readonly motion?: BodyMotion;
  /** Closed ends without friction when absent. */
  readonly conditions?: Conditions;
  /** Switches the capillary gate on. */
  readonly gate?: StandingLiquid;
  readonly timeWeight?: number;
  /** Longest step [s]. When absent the solver's own rule holds, which is made for a die. */
  readonly longestStep?: number;
}

/** A run of the bare solver: the same step as a pour, without watchers, in any channel. */
export interface CaseRun {
  readonly mesh: Mesh;
  readonly flow: Flow;
  readonly forces: Forces;
  readonly motion: BodyMotion;
  readonly longestStep: number | null;
  readonly largestCell: number;
  time: number;
}

export const NO_FRICTION: Conditions = {
  friction: { kind: 'none' },
  start: { kind: 'closed' },
  end: { kind: 'closed' },
};

const still = (inclination: number): BodyMotion => ({
  inclinationAt: () => inclination,
  rateAt: () => 0,
  accelerationAt: () => 0,
});

/** Cosines smaller than this are 0: the body stands upright. */
const UPRIGHT = 1e-12;

/** A case with an empty channel; fill it with `fillDepth` or `fillLevel`. */
export function startCase(setup: CaseSetup): CaseRun {
  const upright = buildMesh(setup.section, setup.meshCells);
  const motion = setup.motion ?? still(setup.inclination ?? 0);
  const mesh = Math.cos(motion.inclinationAt(0)) < -UPRIGHT ? mirrorMesh(upright) : upright;
  const front = setup.gate
    ? frontResistance(setup.gate.surfaceTension, setup.gate.contactAngle, setup.gate.density)
    : { openFront: 0, slotFront: 0 };
  const forces: Forces = {
    gravity: GRAVITY,
    sin: 0,
    cos: 1,
    rate: 0,
    acceleration: 0,
    viscosity: 0,
    drag: DRAG,
    ...front,
    capillaryGate: setup.gate !== undefined,
    timeWeight: setup.timeWeight ?? TIME_WEIGHT,
    conditions: setup.conditions ?? NO_FRICTION,
  };
  const run: CaseRun = {
    mesh,
    flow: new Flow(mesh),
    forces,
    motion,
    longestStep: setup.longestStep ?? null,
    largestCell: largestOrdinaryCell(mesh),
    time: 0,
  };
  turnTo(run, 0);
  rotateLevels(run.flow.levels, mesh, forces.sin, forces.cos);
  return run;
}

function turnTo(run: CaseRun, time: number): void {
  const inclination = run.motion.inclinationAt(time);
  run.forces.sin = Math.sin(inclination);
  run.forces.cos = run.mesh.upsideDown ? -Math.cos(inclination) : Math.max(0, Math.cos(inclination));
  run.forces.rate = run.motion.rateAt(time);
  run.forces.acceleration = run.motion.accelerationAt(time);
}

/** Points at which a depth is averaged over a cell. */
const AVERAGE_POINTS = 16;

/** Mean of a function over mesh cell i. */
export function cellMean(mesh: Mesh, i: number, value: (x: number) => number): number {
  const from = mesh.x[i]!;
  const length = mesh.x[i + 1]! - from;
  let sum = 0;
  for (let k = 0; k < AVERAGE_POINTS; k++) sum += value(from + (length * (k + 0.5)) / AVERAGE_POINTS);
  return sum / AVERAGE_POINTS;
}

/** Puts metal of the given depth [m, normal to the axis] into the channel, at rest. */
export function fillDepth(run: CaseRun, depthAt: (x: number) => number): void {
  const { mesh } = run;
  setVolumes(
    run,
    (i) => Math.max(0, cellMean(mesh, i, depthAt)) * mesh.width[i]! * (mesh.x[i + 1]! - mesh.x[i]!),
  );
}

/** Puts metal with a surface at the given lab elevation [m] into the channel, at rest; full cells feel that head. */
export function fillLevel(run: CaseRun, levelAt: (x: number) => number): void {
  const { mesh, flow } = run;
  const centre = (i: number) => (mesh.x[i]! + mesh.x[i + 1]!) / 2;
  setVolumes(run, (i) => volumeUnder(flow.levels, mesh, i, levelAt(centre(i))));
  for (let i = 0; i < mesh.cells; i++)
    if (flow.volume[i] === mesh.volume[i]) flow.level[i] = Math.max(flow.level[i]!, levelAt(centre(i)));
}

function setVolumes(run: CaseRun, volumeOf: (i: number) => number): void {
  const { mesh, flow } = run;
  for (let i = 0; i < mesh.cells; i++) {
    flow.volume[i] = volumeOf(i);
    flow.level[i] = levelOf(flow.levels, mesh, i, flow.volume[i]!);
    flow.depth[i] = flow.volume[i]! / (mesh.width[i]! * (mesh.x[i + 1]! - mesh.x[i]!));
  }
  for (let j = 1; j < mesh.cells; j++)
    flow.area[j] = (flow.volume[j - 1]! + flow.volume[j]!) / (2 * mesh.facePath[j]!);
}

/** Sets the metal moving: speed along the floor at x [m/s]. */
export function setSpeed(run: CaseRun, speedAt: (x: number) => number): void {
  const { mesh, flow } = run;
  for (let j = 1; j < mesh.cells; j++) {
    flow.speed[j] = flow.area[j]! > 0 ? speedAt(mesh.x[j]!) : 0;
    flow.flux[j] = flow.speed[j]! * flow.area[j]!;
  }
}

/** Advances to `time` exactly; `look` is called after every step. Throws when the level solve finds no answer. */
export function runTo(run: CaseRun, time: number, look?: (run: CaseRun) => void): void {
  while (time - run.time > 1e-12) {
    const left = time - run.time;
    const dt = left / Math.ceil(left / longestAllowed(run) - 1e-9);
    turnTo(run, run.time + dt);
    if (!advance(run.flow, run.mesh, run.forces, dt, run.largestCell))
      throw new Error(`the level solve found no answer at ${run.time} s`);
    run.time += dt;
    look?.(run);
  }
}

function longestAllowed(run: CaseRun): number {
  if (run.longestStep === null) return stepLength(run.flow, run.mesh);
  let quickest = 0;
  for (let j = 1; j < run.mesh.cells; j++)
    quickest = Math.max(quickest, Math.abs(run.flow.speed[j]!) / run.mesh.facePath[j]!);
  return quickest > 0 ? Math.min(run.longestStep, COURANT / quickest) : run.longestStep;
}
