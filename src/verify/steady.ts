import type { Conditions, End, FrictionLaw } from '$src/core/flow/conditions';
import { GRAVITY } from '$src/core/gravity';
import { type CaseRun, fillDepth, fillLevel, runTo, setSpeed, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Effort, Family, Outcome, Plot } from './check';
import {
  BENCH_FAST,
  BENCH_SLOW,
  boreFroude,
  bump,
  bumpWithJump,
  chokedDischarge,
  conjugateRatio,
  criticalDepth,
  depthOfEnergy,
  jumpPlace,
  MACDONALD_LONG,
  type Manufactured,
  manufacturedBed,
  normalDepth,
  stoppedStream,
  subcriticalBump,
  throatDepth,
  throatWidth,
  transcriticalBump,
} from './exact/steady';
import { atLeast, atMost, type Finding, missed, near, nearBy, reported } from './finding';
import { centres, depthError, fittedOrder, mean, settleDepths } from './measure';

/** A steady stream: what enters, how it leaves, and what its depth should be. */
interface Stream {
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

function settle(stream: Stream): CaseRun {
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

const errorOf = (run: CaseRun, stream: Stream, from = 0): number =>
  depthError(run, (x) => stream.depth(x / stream.stretch), from * stream.stretch);

function dischargeSpread(run: CaseRun, discharge: number, from = 1): number {
  let most = 0;
  for (let j = from; j < run.mesh.cells; j++)
    most = Math.max(most, Math.abs(run.flow.flux[j]! / discharge - 1));
  return most;
}

function plotOf(name: string, title: string, run: CaseRun, stream: Stream): Plot {
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
function climb(
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

const BUMP_STRETCH = 30;
const overBump =
  (discharge: number, outlet: 'held' | 'free', depth: (x: number) => number) =>
  (cells: number): Stream => ({
    length: 25,
    cells,
    discharge,
    stretch: BUMP_STRETCH,
    bed: bump,
    depth,
    outlet,
    passes: 12,
  });

function slowBump(): Outcome {
  const streams = [50, 100, 200].map(overBump(4.42, 'held', subcriticalBump(4.42, 2)));
  const runs = streams.map(settle);
  const errors = runs.map((run, k) => errorOf(run, streams[k]!));
  const cause =
    'second order as it should be, with an error a fifth larger than the bar, at the two kinks of the bed';
  const findings = [
    missed('relative L1 of depth, 100 cells', errors[1]!, 4e-4, 6e-4, '', cause),
    missed('relative L1 of depth, 200 cells', errors[2]!, 1e-4, 1.5e-4, '', cause),
    atLeast('observed order, fitted', fittedOrder([50, 100, 200], errors), 1.8),
    atMost('unevenness of the discharge, 200 cells', dischargeSpread(runs[2]!, 4.42), 2e-3),
  ];
  return {
    findings,
    plots: [plotOf('bump-slow', 'Slow stream over a bump, 100 mesh cells', runs[1]!, streams[1]!)],
  };
}

function fastBump(): Outcome {
  const { findings, runs, streams } = climb(overBump(1.53, 'free', transcriticalBump(1.53)), {
    meshes: [100, 200],
    errors: [2e-3, 7e-4],
    order: 1.7,
    spread: 2.6e-3,
  });
  const crest = (runs[1]!.flow.depth[79]! + runs[1]!.flow.depth[80]!) / 2;
  findings.push(near('depth at the crest is critical, 200 cells', criticalDepth(1.53), crest, 0.005, 'm'));
  return {
    findings: [...findings, ...trueSlope()],
    plots: [plotOf('bump-fast', 'Stream turning fast over a bump, 100 mesh cells', runs[0]!, streams[0]!)],
  };
}

/** The bump at its true slope: held to the same energy law with speed along the floor, and told against the table's. */
function trueSlope(): Finding[] {
  const q = 1.53;
  const slopeCos = (x: number) => Math.cos(Math.atan(x > 8 && x < 12 ? -0.1 * (x - 10) : 0));
  const head = 0.2 + 1.5 * criticalDepth(q);
  const alongFloor = (x: number) => depthOfEnergy(q / slopeCos(x), head - bump(x), x < 10 ? 'slow' : 'fast');
  const stream: Stream = { ...overBump(q, 'free', alongFloor)(200), stretch: 1 };
  const run = settle(stream);
  return [
    atMost(
      'relative L1 of depth at true slope, speed along the floor, 200 cells',
      errorOf(run, stream),
      1.5e-3,
    ),
    reported(
      'relative L1 of depth at true slope against the table, 200 cells',
      null,
      depthError(run, transcriticalBump(q)),
      '',
      'the table takes speed along the axis, which is wrong by 1/cos² of the slope in energy: up to 4 % at the foot of this bump',
    ),
  ];
}

function jumpBump(): Outcome {
  const q = 0.18;
  const outlet = 0.33;
  const { findings, runs, streams } = climb(overBump(q, 'held', bumpWithJump(q, outlet)), {
    meshes: [100, 200],
    errors: [6e-3, 3e-3],
    order: 0.8,
    spread: 0.05,
  });
  const place = jumpPlace(q, outlet);
  const middle = (transcriticalBump(q)(place) + subcriticalBump(q, outlet)(place)) / 2;
  const found = (run: CaseRun) => jumpAt(run, middle) / BUMP_STRETCH;
  findings.push(
    nearBy('place of the jump, 200 cells', place, found(runs[1]!), 25 / 200, 'm', 'within one mesh cell'),
  );
  return {
    findings,
    plots: [plotOf('bump-jump', 'Hydraulic jump behind a bump, 200 mesh cells', runs[1]!, streams[1]!)],
  };
}

/** First place past the crest where the depth rises through `depth`. */
function jumpAt(run: CaseRun, depth: number): number {
  const x = centres(run);
  const i = x.findIndex((place, k) => place > 10.5 * BUMP_STRETCH && run.flow.depth[k]! >= depth);
  const share = (depth - run.flow.depth[i - 1]!) / (run.flow.depth[i]! - run.flow.depth[i - 1]!);
  return x[i - 1]! + share * (x[i]! - x[i - 1]!);
}

const manufactured = (channel: Manufactured, stretch: number, friction: FrictionLaw, passes: number) => {
  const bed = manufacturedBed(channel, 2000);
  return (cells: number): Stream => ({
    length: channel.length,
    cells,
    discharge: channel.q,
    stretch,
    friction,
    bed,
    depth: (x) => channel.depth(x),
    outlet: 'held',
    passes,
  });
};

function longChannel(): Outcome {
  const { findings, runs, streams } = climb(
    manufactured(MACDONALD_LONG, 1, { kind: 'Manning', n: 0.033 }, 12),
    { meshes: [100, 200], errors: [8e-3, 4e-3], order: 1, spread: 4e-2 },
  );
  return {
    findings,
    plots: [
      plotOf(
        'macdonald',
        'Channel with a prescribed depth, Manning friction, 100 mesh cells',
        runs[0]!,
        streams[0]!,
      ),
    ],
  };
}

const BENCH_STRETCH = 50;

function benchSlow(): Outcome {
  const { findings } = climb(
    manufactured(BENCH_SLOW, BENCH_STRETCH, { kind: 'Darcy-Weisbach', f: 0.03 / BENCH_STRETCH }, 12),
    { meshes: [50, 100, 200], errors: [4e-4, 1.2e-4, 4e-5], order: 1.7, spread: 1.2e-3 },
  );
  return { findings, plots: [] };
}

/** The fast channel behind an approach that brings the stream from slow to fast, since a fast inflow needs two values. */
function withApproach(fast: Manufactured): Manufactured {
  const approach = fast.length;
  const deep = 0.035;
  const depth = (x: number) => {
    if (x >= approach) return fast.depth(x - approach);
    const s = Math.max(0, x / approach);
    const fall = 1 - s * s * s * (10 - 15 * s + 6 * s * s);
    return fast.depth(x - approach) + (deep - 0.006) * fall;
  };
  return { ...fast, length: fast.length + approach, depth };
}

/** What the ordinary step does to a long fast stream. */
const RIPPLES =
  'the explicit advection ripples in long fast streams at half a mesh cell a step: a limiter cycle of the discharge, 1 to 14 %, that goes with a smaller step and leaves the error a fiftieth';

function benchFast(effort: Effort): Outcome {
  const channel = withApproach(BENCH_FAST);
  const make = manufactured(channel, BENCH_STRETCH, { kind: 'Darcy-Weisbach', f: 0.03 / BENCH_STRETCH }, 3);
  const fine = (cells: number): Stream => ({ ...make(cells), outlet: 'free', stepShare: 0.1 });
  const { findings, runs, streams } = climb(fine, {
    meshes: [100, 200],
    errors: [2e-2, 8e-3],
    order: 1.5,
    spread: 0.02,
    from: BENCH_FAST.length,
  });
  if (effort === 'report') {
    const ordinary: Stream = { ...make(400), outlet: 'free' };
    findings.push(
      missed(
        'relative L1 of depth at the ordinary step, 400 cells',
        errorOf(settle(ordinary), ordinary, BENCH_FAST.length),
        8e-3,
        2e-2,
        '',
        RIPPLES,
      ),
    );
  }
  return {
    findings,
    plots: [
      plotOf(
        'bench-fast',
        'Fast stream on a bench-scale floor behind an approach, 200 mesh cells',
        runs[1]!,
        streams[1]!,
      ),
    ],
  };
}

const throat =
  (discharge: number, chokes: boolean) =>
  (cells: number): Stream => ({
    length: 1,
    cells,
    discharge,
    stretch: 1,
    width: throatWidth,
    depth: throatDepth(discharge, chokes),
    outlet: chokes ? 'free' : 'held',
    passes: 10,
  });

const STEPPED =
  'a section has one width in each region, so a smooth taper becomes steps, whose face is as wide as the narrower side: first order';

function slowThroat(): Outcome {
  const meshes = [50, 100, 200];
  const streams = meshes.map(throat(0.0012, false));
  const runs = streams.map(settle);
  const errors = runs.map((run, k) => errorOf(run, streams[k]!));
  return {
    findings: [
      atMost('relative L1 of depth, 50 cells', errors[0]!, 1.2e-3),
      missed('relative L1 of depth, 100 cells', errors[1]!, 3e-4, 6e-4, '', STEPPED),
      missed('relative L1 of depth, 200 cells', errors[2]!, 8e-5, 3e-4, '', STEPPED),
      atLeast('observed order, fitted', fittedOrder(meshes, errors), 0.9, '', STEPPED),
      atMost('unevenness of the discharge, 200 cells', dischargeSpread(runs[2]!, 0.0012), 4e-4),
    ],
    plots: [],
  };
}

function chokedThroat(): Outcome {
  const streams = [100, 200].map((cells) => ({ ...throat(chokedDischarge, true)(cells), stepShare: 0.25 }));
  const runs = streams.map(settle);
  const errors = runs.map((run, k) => errorOf(run, streams[k]!));
  const ordinary = throat(chokedDischarge, true)(200);
  const findings = [
    missed('relative L1 of depth, 100 cells', errors[0]!, 4e-4, 7e-3, '', STEPPED),
    missed('relative L1 of depth, 200 cells', errors[1]!, 1e-4, 3.5e-3, '', STEPPED),
    atLeast('observed order', fittedOrder([100, 200], errors), 0.85, '', STEPPED),
    atMost(
      'unevenness of the discharge, a quarter of the ordinary step, 200 cells',
      dischargeSpread(runs[1]!, chokedDischarge),
      1.2e-3,
    ),
    missed(
      'unevenness of the discharge, ordinary step, 200 cells',
      dischargeSpread(settle(ordinary), chokedDischarge),
      1.2e-3,
      2e-2,
      '',
      RIPPLES,
    ),
    near(
      'depth upstream, 200 cells',
      throatDepth(chokedDischarge, true)(0.005),
      runs[1]!.flow.depth[1]!,
      0.003,
      'm',
    ),
  ];
  return {
    findings,
    plots: [plotOf('throat', 'Stream choked by a contraction, 100 mesh cells', runs[0]!, streams[0]!)],
  };
}

/** Metal rising over a vertical step passes at no more than critical flow: q = (2E/3)^1.5 √g over the step. */
function weir(): Outcome {
  const findings = [0.004, 0.01, 0.02].map((q) => {
    const floor = [
      { x: 0, y: -0.05 },
      { x: 1, y: -0.05 },
      { x: 1, y: 0 },
      { x: 1.3, y: 0 },
      { x: 2, y: -0.2 },
    ];
    const section = { ...channelSection({ length: 2, cells: 200, roof: 0.3 }), floor };
    const run = startCase({
      section,
      meshCells: 200,
      conditions: {
        friction: { kind: 'none' },
        start: { kind: 'inflow', discharge: q },
        end: { kind: 'level', level: -0.19, whileSubcritical: true },
      },
    });
    fillLevel(run, (x) => (x < 1 ? 0.01 : -1));
    runTo(run, 20);
    settleDepths(run);
    const upstream = run.flow.depth[50]!;
    const energy = upstream - 0.05 + (q / upstream) ** 2 / (2 * GRAVITY);
    return near(
      `discharge over that of the ideal weir, ${q} m²/s`,
      1,
      q / (Math.sqrt(GRAVITY) * ((2 / 3) * energy) ** 1.5),
      0.02,
    );
  });
  return { findings, plots: [] };
}

/** A stream stopped by a wall: the bore that runs back must satisfy Bélanger in its own frame. */
function stopped(): Outcome {
  const findings: Finding[] = [];
  for (const [h1, u1] of [
    [0.02, 0.2],
    [0.02, 0.6],
    [0.01, 1],
    [0.005, 1.5],
  ] as const) {
    const { depth, bore } = stoppedStream(h1, u1);
    const cells = 200;
    const run = startCase({
      section: channelSection({ length: 1, cells, roof: 4 * depth }),
      meshCells: cells,
      conditions: {
        friction: { kind: 'none' },
        start: { kind: 'inflow', discharge: h1 * u1 },
        end: { kind: 'closed' },
      },
    });
    fillDepth(run, () => h1);
    setSpeed(run, () => u1);
    run.flow.flux[0] = h1 * u1;
    const time = 0.4 / bore;
    runTo(run, time);
    settleDepths(run);
    const behind = mean([...run.flow.depth].slice(150, 190));
    const froude = (u1 + bore) / Math.sqrt(GRAVITY * h1);
    const place = 1 - bore * time;
    const mid = (h1 + depth) / 2;
    const i = [...run.flow.depth].findIndex((h) => h > mid);
    findings.push(
      near(
        `depth ratio of the bore, Froude ${froude.toFixed(2)}`,
        conjugateRatio(froude),
        behind / h1,
        0.005,
      ),
      nearBy(
        `place of the bore, Froude ${froude.toFixed(2)}`,
        place,
        centres(run)[i]!,
        2 / cells,
        'm',
        'within two mesh cells; the first instant at the wall costs one',
      ),
    );
  }
  return { findings, plots: [] };
}

/** Labels of bores: strength and Froude number are one relation. */
function boreLimits(): Outcome {
  const rows = [
    ['Favre 1935, critical strength 0.281 (Kalisch et al. 2020)', 0.281, 1.20871],
    ['Chanson 2010, first crest breaking, low', 0.405256, 1.3],
    ['Chanson 2010, first crest breaking, high', 0.542058, 1.4],
    ['undular limit, low', 0.679449, 1.5],
    ['undular limit, high', 1.094224, 1.8],
  ] as const;
  return {
    findings: rows.map(([name, strength, froude]) =>
      near(`Froude number of a bore, ${name}`, froude, boreFroude(1 + strength), 1e-5),
    ),
    plots: [],
  };
}

function evenFlow(): Outcome {
  const q = 0.5;
  const findings = (
    [
      [0.025, 0.002],
      [0.033, 0.004],
    ] as const
  ).map(([n, slope]) => {
    const depth = normalDepth(q, n, slope);
    const length = 400;
    const cells = 50;
    const inclination = -Math.atan(slope);
    const last = length * (1 - 0.5 / cells);
    const run = startCase({
      section: channelSection({ length, cells, roof: 5 * depth }),
      meshCells: cells,
      inclination,
      conditions: {
        friction: { kind: 'Manning', n },
        start: { kind: 'inflow', discharge: q },
        end: { kind: 'level', level: last * Math.sin(inclination) + depth * Math.cos(inclination) },
      },
      longestStep: 1,
    });
    fillDepth(run, () => 1.2 * depth);
    setSpeed(run, () => q / (1.2 * depth));
    runTo(run, 1500);
    settleDepths(run);
    return near(`depth of even flow, n ${n}, slope ${slope}`, depth, run.flow.depth[20]!, 0.002, 'm');
  });
  return { findings, plots: [] };
}

const GOUTAL = 'Goutal & Maurel 1997; Delestre et al. 2013, section 3.1';
const GENTLE_BUMP = `25 m, bump 0.2 m high, lengths stretched ${BUMP_STRETCH} times (a steady depth depends on the height of the bed alone)`;
const MACDONALD = 'MacDonald et al. 1997, J. Hydraul. Eng. 123';
const runFor = (run: () => Outcome) => (_: Effort) => run();

export const steadyStreams: Family = {
  name: 'Steady streams, bores and jumps',
  about:
    'Streams that settle to a depth known in closed form. They start on it and must stay: a scheme with another steady state drifts away. Inflow and held levels exist for these checks only.',
  checks: [
    {
      id: 'A08a',
      title: 'Slow stream over a bump',
      source: GOUTAL,
      setting: `${GENTLE_BUMP}, 4.42 m²/s`,
      run: runFor(slowBump),
    },
    {
      id: 'A08b',
      title: 'Stream turning fast over a bump',
      source: GOUTAL,
      setting: `${GENTLE_BUMP}, 1.53 m²/s, free outlet`,
      run: runFor(fastBump),
    },
    {
      id: 'A08c',
      title: 'Hydraulic jump behind a bump',
      source: GOUTAL,
      setting: `${GENTLE_BUMP}, 0.18 m²/s`,
      run: runFor(jumpBump),
    },
    {
      id: 'A09a',
      title: 'Long channel, Manning friction',
      source: MACDONALD,
      setting: '1 km, 2 m²/s, n 0.033',
      run: runFor(longChannel),
    },
    {
      id: 'A09b',
      title: 'Bench-scale channel, slow',
      source: `constructed by the method of ${MACDONALD}`,
      setting: `0.4 m stretched ${BENCH_STRETCH} times, Darcy-Weisbach 0.03 lessened as much`,
      run: runFor(benchSlow),
    },
    {
      id: 'A09c',
      title: 'Bench-scale channel, fast',
      source: `constructed by the method of ${MACDONALD}`,
      setting: `0.4 m stretched ${BENCH_STRETCH} times, behind an approach of the same length; bars at the meshes of the fast half`,
      run: benchFast,
    },
    {
      id: 'A10a',
      title: 'Slow stream through a contraction',
      source: 'energy conservation (Henderson 1966, from memory)',
      setting: '1 m, width 100 to 70 mm, 1.2 l/s',
      run: runFor(slowThroat),
    },
    {
      id: 'A10b',
      title: 'Stream choked by a contraction',
      source: 'energy conservation (Henderson 1966, from memory)',
      setting: 'the same at the greatest discharge, free outlet',
      run: runFor(chokedThroat),
    },
    {
      id: 'A11',
      title: 'Stream stopped by a wall',
      source: 'Bélanger 1841; Chow 1959, chapter 3',
      setting: '1 m, 200 mesh cells',
      run: runFor(stopped),
    },
    {
      id: 'weir',
      title: 'Metal over a vertical step',
      source: 'critical flow over a broad crest (Chow 1959; Henderson 1966, from memory)',
      setting: 'step 50 mm high, 2 m, 20 s, 200 mesh cells',
      run: runFor(weir),
    },
    {
      id: 'A12',
      title: 'Depth of even flow',
      source: 'Manning; Chow 1959 (from memory)',
      setting: 'wide channel 400 m long on a slope, from 1.2 times the depth, 50 mesh cells',
      run: runFor(evenFlow),
    },
    {
      id: 'C03',
      title: 'Strength and Froude number of bores',
      source: 'Bélanger; Favre 1935 after Kalisch et al. 2020; Chanson 2010',
      setting: 'closed form',
      run: runFor(boreLimits),
    },
  ],
};
