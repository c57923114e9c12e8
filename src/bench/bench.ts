import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { advance, largestOrdinaryCell, stepLength } from '$src/core/flow/advance';
import { DIE_CONDITIONS } from '$src/core/flow/conditions';
import { Flow } from '$src/core/flow/flow';
import { type Forces, frontResistance } from '$src/core/flow/forces';
import { DRAG, TIME_WEIGHT } from '$src/core/flow/settings';
import { GRAVITY } from '$src/core/gravity';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { buildMesh, type Mesh } from '$src/core/mesh/mesh';
import { type PourPlan, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import { pourIn } from '$src/core/pour/pourIn';
import { runPour } from '$src/core/pour/runPour';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { benchWindow } from './window';

/**
 * Speed of the solver, as ratios in one run. The same pour, step by step: the TypeScript step, and the same scheme
 * compiled from C with the machine's own compiler at −O3; then whole pours with watchers and record.
 */

const POUR_SECONDS = 8;
const SAMPLE = 2e-3;
const ROUNDS = 5;
/** Rounds before the count begins: the engine compiles the code it runs in them, which is CPU time too; the watchers take five. */
const WARM_UP = 6;
const RATE = fromDegrees(15);

function benchPlan(meshCells: number): PourPlan {
  const at = (x: number, y: number) => ({ x: fromMillimetres(x), y: fromMillimetres(y) });
  return {
    section: {
      floor: [at(0, 0), at(355, 0)],
      roof: [at(0, 95), at(103, 95), at(103, 30), at(355, 30)],
      openings: [{ wall: 'roof', from: 0, to: 1 }],
      regions: [{ name: 'all', end: fromMillimetres(355), width: fromMillimetres(100) }],
      mouth: fromMillimetres(155),
      cavities: 1,
      pivot: at(155, 0),
      vents: [{ place: fromMillimetres(354), area: 20e-6, blocked: 0 }],
    },
    liquid: {
      density: 2400,
      viscosity: 1.3e-3,
      surfaceTension: 0.9,
      contactAngle: fromDegrees(150),
      criticalSpeed: 0.5,
    },
    volume: 690e-6,
    tilt: {
      kind: 'steady',
      start: fromDegrees(30),
      end: fromDegrees(-90),
      rate: RATE,
      smoothing: 0,
      limits: {
        highestStart: fromDegrees(60),
        lowestEnd: fromDegrees(-90),
        slowest: fromDegrees(1),
        quickest: fromDegrees(120),
      },
    },
    computation: { meshCells, capillaryGate: true, settlingTime: 4, gas: 'free' },
  };
}

interface Case {
  readonly mesh: Mesh;
  readonly flow: Flow;
  readonly forces: Forces;
  readonly largest: number;
}

function prepare(plan: PourPlan): Case {
  const mesh = buildMesh(plan.section, plan.computation.meshCells);
  const flow = new Flow(mesh);
  const { liquid } = plan;
  const sin = Math.sin(plan.tilt.start);
  const cos = Math.cos(plan.tilt.start);
  pourIn(
    flow,
    mesh,
    levelPath(plan.section, plan.volume, plan.tilt.start, plan.tilt.start, standOf(liquid)).pools[0]!,
    sin,
    cos,
  );
  const forces: Forces = {
    gravity: GRAVITY,
    sin,
    cos,
    rate: 0,
    acceleration: 0,
    viscosity: liquid.viscosity / liquid.density,
    drag: DRAG,
    ...frontResistance(liquid.surfaceTension, liquid.contactAngle, liquid.density),
    capillaryGate: true,
    timeWeight: TIME_WEIGHT,
    conditions: DIE_CONDITIONS,
  };
  return { mesh, flow, forces, largest: largestOrdinaryCell(mesh) };
}

/** The bare steps of the pour; returns the CPU seconds. */
function runSteps({ mesh, flow, forces, largest }: Case): number {
  const start = fromDegrees(30);
  const end = fromDegrees(-90);
  const turning = (start - end) / RATE;
  const begun = process.cpuUsage();
  let time = 0;
  while (time < POUR_SECONDS - 1e-9) {
    const target = time + SAMPLE;
    let left = SAMPLE;
    while (left > 0) {
      const dt = left / Math.ceil(left / stepLength(flow, mesh) - 1e-9);
      const after = left - dt < 1e-12 ? target : target - (left - dt);
      const inclination = after >= turning ? end : start - RATE * after;
      forces.sin = Math.sin(inclination);
      forces.cos = Math.max(0, Math.cos(inclination));
      forces.rate = after >= turning ? 0 : -RATE;
      advance(flow, mesh, forces, dt, largest);
      time = after;
      left = target - after;
    }
  }
  const used = process.cpuUsage(begun);
  return (used.user + used.system) / 1e6;
}

function writeCase(file: string, { mesh, flow, forces, largest }: Case): void {
  const head = new Float64Array(18);
  head.set([
    mesh.cells,
    mesh.rims.length,
    mesh.pivotX,
    mesh.pivotY,
    forces.viscosity,
    forces.drag,
    forces.openFront,
    forces.slotFront,
    forces.timeWeight,
    largest,
    1,
    fromDegrees(30),
    fromDegrees(-90),
    RATE,
    POUR_SECONDS,
  ]);
  const parts = [
    head,
    mesh.x,
    mesh.floorLeft,
    mesh.floorRight,
    mesh.roofLeft,
    mesh.roofRight,
    mesh.width,
    mesh.volume,
    mesh.path,
    mesh.floorCos,
    mesh.floorSin,
    mesh.sill,
    mesh.ceiling,
    mesh.faceWidth,
    mesh.facePath,
    Float64Array.from(mesh.step),
    Float64Array.from(mesh.rims, (rim) => rim.cell),
    Float64Array.from(mesh.rims, (rim) => rim.x),
    Float64Array.from(mesh.rims, (rim) => rim.y),
    flow.volume,
  ];
  writeFileSync(
    file,
    Buffer.concat(parts.map((part) => Buffer.from(part.buffer, part.byteOffset, part.byteLength))),
  );
}

interface Compiled {
  readonly seconds: number;
  readonly steps: number;
  readonly volumes: number[];
}

function compile(folder: string): string | null {
  const program = join(folder, 'scheme');
  for (const compiler of ['cc', 'gcc', 'clang']) {
    try {
      execFileSync(compiler, ['-O3', '-o', program, 'src/bench/scheme.c', '-lm'], { stdio: 'pipe' });
      return program;
    } catch {
      // The next compiler may be there.
    }
  }
  return null;
}

const median = (values: number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

function benchOne(meshCells: number, program: string | null, folder: string): void {
  const plan = benchPlan(meshCells);
  const own: number[] = [];
  const compiled: number[] = [];
  const whole: number[] = [];
  let first = 0;
  let last: Case | null = null;
  let other: Compiled | null = null;
  for (let round = 0; round < WARM_UP + ROUNDS; round++) {
    last = prepare(plan);
    if (program && round === 0) writeCase(join(folder, 'case.bin'), last);
    const seconds = runSteps(last);
    if (program)
      other = JSON.parse(
        execFileSync(program, [join(folder, 'case.bin')], { encoding: 'utf8', maxBuffer: 1e9 }),
      ) as Compiled;
    const begun = process.cpuUsage();
    const run = runPour(plan);
    let step = run.next();
    while (!step.done) step = run.next();
    const used = process.cpuUsage(begun);
    const all = ((used.user + used.system) / 1e6 / step.value.series.time.at(-1)!) * POUR_SECONDS;
    if (round === 0) first = all;
    if (round < WARM_UP) continue;
    own.push(seconds);
    whole.push(all);
    if (other) compiled.push(other.seconds);
  }
  const { flow, mesh } = last!;
  const seconds = median(own);
  console.log(`\n${meshCells} mesh cells, ${POUR_SECONDS} s pour, median of ${ROUNDS} rounds (CPU seconds)`);
  console.log(
    `  steps alone           ${seconds.toFixed(3)} s   ${((flow.steps * mesh.cells) / seconds / 1e6).toFixed(1)} million cell-steps/s   ${(1 / seconds).toFixed(1)} pours/s   ${(POUR_SECONDS / seconds).toFixed(0)} pour-seconds/s`,
  );
  console.log(
    `  with watchers, record ${median(whole).toFixed(3)} s   ${(median(whole) / seconds).toFixed(2)} × the steps   (the first round, uncompiled as yet, ${first.toFixed(3)} s)`,
  );
  console.log(
    `  ${(flow.newtonIterations / flow.steps).toFixed(2)} level solves a step, ${flow.searchedSolves} searched`,
  );
  if (!other) return;
  const worst = Math.max(
    ...flow.volume.map((volume, i) => Math.abs(volume - other!.volumes[i]!) / mesh.volume[i]!),
  );
  console.log(
    `  compiled C −O3        ${median(compiled).toFixed(3)} s   ratio TypeScript / C ${median(own.map((value, k) => value / compiled[k]!)).toFixed(2)}   (${other.steps} and ${flow.steps} steps; largest difference of a cell at the end ${worst.toExponential(1)})`,
  );
}

const folder = mkdtempSync(join(tmpdir(), 'quietpour-bench-'));
const program = compile(folder);
if (!program) console.log('No C compiler (cc, gcc or clang) found: the ratio to compiled code is left out.');
for (const meshCells of [PREVIEW_MESH_CELLS, 200, 400]) benchOne(meshCells, program, folder);
rmSync(folder, { recursive: true });
await benchWindow();
