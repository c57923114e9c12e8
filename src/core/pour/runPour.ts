import { cosine, sine } from '$src/core/elementary/sine';
import { advance, largestOrdinaryCell, stepLength } from '$src/core/flow/advance';
import { DIE_CONDITIONS } from '$src/core/flow/conditions';
import { Flow } from '$src/core/flow/flow';
import { type Forces, frontResistance } from '$src/core/flow/forces';
import { makeGas } from '$src/core/flow/gas';
import { CALM_STEP, DRAG, LONGEST_STEP, TIME_WEIGHT } from '$src/core/flow/settings';
import { GRAVITY } from '$src/core/gravity';
import { carryHeat } from '$src/core/heat/carryHeat';
import { setFrontHolds } from '$src/core/heat/frontHold';
import { type Heat, makeHeat } from '$src/core/heat/heat';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { buildMesh, type Mesh } from '$src/core/mesh/mesh';
import { mirrorMesh } from '$src/core/mesh/mirror';
import { liveMotion } from '$src/core/tilt/machine/liveMotion';
import { machineWarnings } from '$src/core/tilt/machine/machineWarnings';
import { motionOf } from '$src/core/tilt/motionOf';
import { usableLimits } from '$src/core/tilt/range';
import type { PlainTilt } from '$src/core/tilt/tilt';
import { findFront, makeProfile, readProfile, SAMPLE_TIME } from '$src/core/watch/sample';
import { ending, isFullAndCalm } from './ending';
import { checkHealth } from './health';
import { isFrontLed, ledByLevel } from './ledByLevel';
import { metalLoad } from './metalLoad';
import type { PourPlan } from './plan';
import { pourIn } from './pourIn';
import type { FrontSketch, Outcome, PourRecord, Progress } from './record';
import { makeRecorder } from './recorder';
import type { Run } from './run';
import { ventsOf } from './ventsOf';
import { makeWatchers } from './watchers';

/** Name and version of the scheme; a record made by another version is out of date. */
export const SOLVER = 'quietpour 9';

/** Cosines smaller than this are 0: the body stands upright. */
const UPRIGHT = 1e-12;
/** Looks between two reports of progress. */
const LOOKS_PER_REPORT = 10;
/** A sketch of the front is looked at less often: at its coarse mesh this, and not the looks, sets the step [s]. */
const SKETCH_LOOK_TIME = 5e-3;
/**
 * Runs one pour on one mesh: a generator of progress that returns the record without its band.
 * `next({ stop: true })` ends it with a partial record.
 * @param finer how many times shorter than needed each step is made, 1 or more: for checks of what the step does
 * @throws RangeError when the plan is nonsense (checks for people come before, in `cells`)
 */
export function* runPour(
  plan: PourPlan,
  finer: number = 1,
): Generator<Progress, PourRecord, { stop: boolean } | undefined> {
  if (!(finer >= 1)) throw new RangeError(`finer: got ${finer}, expected 1 or more`);
  const run = begin(plan, SAMPLE_TIME, finer);
  look(run, 0);
  const limitNow = () => run.motion.duration + plan.computation.settlingTime;
  let outcome: Outcome | null = null;
  let looks = 0;
  while (outcome === null) {
    outcome = advanceToNextLook(run) ?? ending(run, limitNow());
    if (++looks % LOOKS_PER_REPORT !== 0 || outcome !== null) continue;
    const answer = yield progressOf(run, limitNow());
    if (answer?.stop) outcome = { kind: 'stopped by the user' };
  }
  const record = run.recorder.finish(outcome, run.watchers, {
    flow: run.flow,
    volumeDrift: run.drift,
    greatestSpeed: run.greatestSpeed,
  });
  return { ...record, ...fallOf(run, outcome) };
}

/** What the machine did, when one turned the body. */
function fallOf({ body, plan: { tilt } }: Run, outcome: Outcome): Pick<PourRecord, 'machine'> {
  if (!body || tilt.kind !== 'machine') return {};
  const turned = body.turned();
  const wasCut = outcome.kind === 'stopped' || outcome.kind === 'stopped by the user';
  const warnings = machineWarnings(tilt, turned, usableLimits(tilt.limits).quickest);
  // A run that was cut short has not shown that the body hangs.
  return { machine: { ...turned, warnings: warnings.filter(({ kind }) => !(wasCut && kind === 'hangs')) } };
}

/**
 * Runs a pour until its front has reached the die end, and keeps of it what the front did: for a hand that drags and
 * cannot wait for a record. Nothing but the front is watched, and looks are further apart than in a full run. A tilt
 * that is to be front-led is taken as the level fill alone has it.
 * @throws RangeError when the plan is nonsense (checks for people come before, in `cells`)
 */
export function runFront(plan: PourPlan): FrontSketch {
  const given = isFrontLed(plan) ? { ...plan, tilt: ledByLevel(plan) } : plan;
  const run = frontRun(begin(given, SKETCH_LOOK_TIME, 1));
  const { front } = run.watchers;
  const limit = run.motion.duration + plan.computation.settlingTime;
  look(run, 0);
  let outcome: Outcome | null = null;
  while (outcome === null && front.arrival() === null) outcome = advanceToNextLook(run) ?? ending(run, limit);
  return { frontSpeeds: front.frontSpeeds(), arrivalTime: front.arrival()?.time ?? null };
}

/** The run with its front watched and nothing recorded. */
function frontRun(run: Run): Run {
  const watchers = { ...run.watchers, all: [run.watchers.front] };
  return { ...run, watchers, recorder: { ...run.recorder, look: () => undefined } };
}

function begin(plan: PourPlan, lookEvery: number, finer: number): Run {
  refuseNonsense(plan);
  const mesh = buildMesh(plan.section, plan.computation.meshCells);
  const flow = new Flow(mesh);
  if (plan.computation.gas !== 'free')
    flow.gas = makeGas(mesh, ventsOf(plan.section, mesh), plan.liquid.density, GRAVITY);
  const { liquid } = plan;
  const tilt = plainTilt(plan);
  const forces: Forces = {
    gravity: GRAVITY,
    sin: sine(tilt.start),
    cos: Math.abs(cosine(tilt.start)),
    rate: 0,
    acceleration: 0,
    viscosity: liquid.viscosity / liquid.density,
    drag: DRAG,
    ...frontResistance(liquid.surfaceTension, liquid.contactAngle, liquid.density),
    capillaryGate: plan.computation.capillaryGate,
    timeWeight: TIME_WEIGHT,
    conditions: plan.computation.conditions ?? DIE_CONDITIONS,
  };
  ladleIn(flow, mesh, plan, forces);
  const load = metalLoad(mesh, flow, liquid.density, tilt.start);
  const body = tilt.kind === 'machine' ? liveMotion(tilt, load) : null;
  const motion = body ?? motionOf(tilt);
  const heat = heatIn(plan, flow, mesh);
  const dieLength = mesh.facePlace[mesh.cells]!;
  return {
    plan,
    mesh,
    meshTurned: mirrorMesh(mesh),
    flow,
    forces,
    motion,
    body,
    heat,
    watchers: makeWatchers(mesh, plan, flow, heat),
    recorder: makeRecorder(plan, mesh, SOLVER),
    lookEvery,
    finer,
    sample: {
      time: 0,
      elapsed: 0,
      inclination: motion.start,
      flow,
      mesh,
      profile: makeProfile(mesh),
      front: 0,
      frontAlongAxis: 0,
      dieLength,
    },
    largestCell: largestOrdinaryCell(mesh),
    volumeAtStart: plan.volume,
    time: 0,
    quietFor: 0,
    spilledBefore: 0,
    drift: 0,
    greatestSpeed: 0,
    speedNow: 0,
  };
}

/** The pools of the level fill, what ran over a rim already counted. */
function ladleIn(flow: Flow, mesh: Mesh, plan: PourPlan, forces: Forces): void {
  const stand = forces.capillaryGate ? standOf(plan.liquid) : null;
  const start = levelPath(plan.section, plan.volume, plan.tilt.start, plan.tilt.start, stand);
  pourIn(flow, mesh, start.pools[0]!, forces.sin, forces.cos);
  flow.spilled = start.spilled[0]!;
}

function heatIn(plan: PourPlan, flow: Flow, mesh: Mesh): Heat | null {
  if (!plan.heat) return null;
  flow.holds = new Float64Array(mesh.cells + 1).fill(1);
  const ends = plan.section.regions.map((region) => region.end);
  return makeHeat(plan.heat, flow, mesh, ends, plan.section.cavities);
}

/** A front-led tilt has to be worked out before it can be run: see `simulate`. */
function plainTilt({ tilt }: PourPlan): PlainTilt {
  if (tilt.kind === 'front-led') throw new RangeError('tilt: got front-led, expected one that is worked out');
  return tilt;
}

function refuseNonsense(plan: PourPlan): void {
  if (!(plan.volume > 0 && Number.isFinite(plan.volume)))
    throw new RangeError(`volume of metal: got ${plan.volume} m³, expected a positive number`);
  if (!(plan.liquid.density > 0))
    throw new RangeError(`density: got ${plan.liquid.density} kg/m³, expected a positive number`);
}

/** Steps until the next look, landing on it exactly. */
function advanceToNextLook(run: Run): Outcome | null {
  const target = run.time + run.lookEvery;
  let left = run.lookEvery;
  while (left > 0) {
    const longest = stepLength(run.flow, run.mesh, isCalm(run) ? CALM_STEP : LONGEST_STEP) / run.finer;
    const dt = left / Math.ceil(left / longest - 1e-9);
    const after = left - dt < 1e-12 ? target : target - (left - dt);
    turnBody(run, dt);
    setForces(run, after);
    if (run.heat && run.flow.holds) setFrontHolds(run.flow.holds, run.heat, run.flow, run.mesh);
    if (!advance(run.flow, run.mesh, run.forces, dt, run.largestCell))
      return { kind: 'stopped', reason: `The level solve found no answer at ${run.time.toFixed(3)} s.` };
    if (run.heat) carryHeat(run.heat, run.flow, run.mesh, run.forces, dt, after);
    run.time = after;
    left = target - after;
  }
  return look(run, run.lookEvery);
}

/** Heat and a machine that falls under its metal keep the ordinary step: their own accuracy hangs on it. */
function isCalm(run: Run): boolean {
  return isFullAndCalm(run) && !run.heat && !run.body;
}

/** The machine falls on under the metal as it lies now. */
function turnBody({ body, mesh, flow, plan, motion, time }: Run, dt: number): void {
  body?.advance(metalLoad(mesh, flow, plan.liquid.density, motion.inclinationAt(time)), dt);
}

function setForces(run: Run, time: number): void {
  const inclination = run.motion.inclinationAt(time);
  const cos = cosine(inclination);
  if (cos < -UPRIGHT !== run.mesh.upsideDown) run.mesh = run.meshTurned;
  run.forces.sin = sine(inclination);
  run.forces.cos = Math.abs(cos);
  run.forces.rate = run.motion.rateAt(time);
  run.forces.acceleration = run.motion.accelerationAt(time);
}

function look(run: Run, elapsed: number): Outcome | null {
  const { sample, flow, mesh } = run;
  const front = findFront(flow, mesh);
  sample.time = run.time;
  sample.elapsed = elapsed;
  sample.inclination = run.motion.inclinationAt(run.time);
  sample.front = front.path;
  sample.frontAlongAxis = front.axis;
  readProfile(sample.profile, flow, mesh);
  const broken = checkHealth(run);
  if (broken) return broken;
  for (const watcher of run.watchers.all) watcher.look(sample);
  run.recorder.look(sample, run.watchers);
  return null;
}

function progressOf(run: Run, limit: number): Progress {
  return {
    time: run.time,
    done: Math.min(1, run.time / limit),
    inclination: run.sample.inclination,
    filledShare: run.watchers.fill.share(),
  };
}
