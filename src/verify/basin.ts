import { type CaseRun, fillDepth, runTo, setSpeed, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Effort, Family, Outcome, Plot } from './check';
import {
  BASIN,
  basinBed,
  basinDepth,
  rubbedMiddle,
  THACKER_PERIOD,
  thackerMiddle,
  thackerSpeed,
} from './exact/basin';
import { atLeast, atMost, type Finding, near, reported } from './finding';
import { centres, depthError, fittedOrder, orderOf, settleDepths } from './measure';
import { predictedLoss } from './slosh';

/**
 * Lengths and times are stretched by this: shallow-water flow keeps its depths and speeds then, and the basin's
 * walls become so gentle that speed along the floor and along the axis are one. At their true slope of 45° the
 * solver, which takes speed along the floor, solves a better problem than the table's.
 */
const STRETCH = 100;
const LENGTH = 4;

interface Swing {
  readonly friction: number;
  readonly cells: number;
  readonly start: (x: number) => number;
  readonly speed: number;
  /** Longest step on 100 mesh cells in true time [s]; refined with the mesh. */
  readonly longestStep: number;
}

function startSwing({ friction, cells, start, speed, longestStep }: Swing): CaseRun {
  const bed = (x: number) => basinBed(x / STRETCH - LENGTH / 2);
  const run = startCase({
    section: channelSection({ length: LENGTH * STRETCH, cells, bed, roof: 3 }),
    meshCells: cells,
    conditions: {
      friction: friction > 0 ? { kind: 'linear', rate: friction / STRETCH } : { kind: 'none' },
      start: { kind: 'closed' },
      end: { kind: 'closed' },
    },
    longestStep: (STRETCH * longestStep * 100) / cells,
  });
  fillDepth(run, (x) => start(x / STRETCH - LENGTH / 2));
  if (speed !== 0) setSpeed(run, () => speed);
  return run;
}

/** Middle of the metal in true lengths [m]. */
function middleOf(run: CaseRun): number {
  let moment = 0;
  let total = 0;
  centres(run).forEach((x, i) => {
    moment += x * run.flow.volume[i]!;
    total += run.flow.volume[i]!;
  });
  return moment / total / STRETCH - LENGTH / 2;
}

const errorAt = (run: CaseRun, middle: number): number =>
  depthError(run, (x) => basinDepth(x / STRETCH - LENGTH / 2, middle));

/** A swing without friction from its left end. */
const swing = (cells: number, longestStep: number): CaseRun =>
  startSwing({ friction: 0, cells, start: (x) => basinDepth(x, thackerMiddle(0)), speed: 0, longestStep });

function planar(effort: Effort): Outcome {
  const meshes = effort === 'test' ? [50, 100, 200] : [100, 200, 400, 800];
  const errors = meshes.map((cells) => {
    const run = swing(cells, 2.5e-3);
    runTo(run, STRETCH * THACKER_PERIOD);
    settleDepths(run);
    return errorAt(run, thackerMiddle(THACKER_PERIOD));
  });
  const findings: Finding[] = [
    ...errors.map((error, k) =>
      reported(
        `relative L1 of depth after a period, ${meshes[k]} cells`,
        null,
        error,
        '',
        k > 0 ? `order ${orderOf(errors[k - 1]!, error).toFixed(2)}` : undefined,
      ),
    ),
    atLeast('observed order, fitted', fittedOrder(meshes, errors), 0.85, '', 'first order in time'),
    ...lossInTime(),
  ];
  const fine = swing(200, 1e-3);
  runTo(fine, STRETCH * 1.25 * THACKER_PERIOD);
  findings.push(
    near(
      'speed at the middle after 1.25 periods, 200 cells',
      thackerSpeed(1.25 * THACKER_PERIOD),
      fine.flow.speed[100]!,
      0.02,
      'm/s',
    ),
  );
  findings.push(...afterFivePeriods(fine, 2e-2, 0.98));
  if (effort === 'report') findings.push(...afterFivePeriods(swing(400, 1e-3), 8e-3, 0.99));
  return { findings, plots: [swingPlot(fine)] };
}

/** The swing must lose what the time weights of the scheme take, no more and no less. */
function lossInTime(): Finding[] {
  const dt = 5e-3;
  const run = swing(100, dt);
  runTo(run, STRETCH * 2 * THACKER_PERIOD);
  const kept = middleOf(run) / thackerMiddle(0);
  return [
    near(
      'loss of swing in two periods at a step of 5 ms, 100 cells',
      1 - (1 - predictedLoss(THACKER_PERIOD, dt)) ** 2,
      1 - kept,
      0.15,
      '',
      'of the formula for small sloshes; the rest is the shore',
    ),
  ];
}

function afterFivePeriods(run: CaseRun, error: number, kept: number): Finding[] {
  runTo(run, STRETCH * 5 * THACKER_PERIOD);
  settleDepths(run);
  const end = thackerMiddle(5 * THACKER_PERIOD);
  const { cells } = run.mesh;
  return [
    atMost(`relative L1 of depth after five periods, ${cells} cells`, errorAt(run, end), error),
    atLeast(`swing kept after five periods, ${cells} cells`, middleOf(run) / end, kept),
  ];
}

function swingPlot(run: CaseRun): Plot {
  const x = centres(run).map((place) => place / STRETCH - LENGTH / 2);
  return {
    name: 'basin',
    title: 'Metal swinging in a parabolic basin after five periods, 200 mesh cells',
    xLabel: 'place, m',
    yLabel: 'depth, m',
    curves: [
      { name: 'exact', x, y: x.map((place) => basinDepth(place, thackerMiddle(0))), look: 'line' },
      { name: 'computed', x, y: [...run.flow.depth], look: 'marks' },
    ],
  };
}

function rubbed(): Outcome {
  const tau = 0.8;
  const start = 0.6;
  const run = startSwing({
    friction: tau,
    cells: 200,
    start: (x) => basinDepth(x, 0),
    speed: start,
    longestStep: 2.5e-3,
  });
  const findings = [0.5, 1, 1.5, 2, 3, 4].map((t) => {
    runTo(run, STRETCH * t);
    return atMost(
      `middle of the metal off the exact one, over its swing of 0.19 m, ${t} s`,
      Math.abs(middleOf(run) - rubbedMiddle(t, tau, start)) / 0.19,
      0.01,
    );
  });
  return { findings, plots: [] };
}

const GENTLE = `depths ${BASIN.h0} m; lengths and times stretched ${STRETCH} times, which shallow-water flow does not notice, so that the basin's 45° walls become gentle`;

export const basins: Family = {
  name: 'Basins with moving shores',
  about:
    'Metal swinging in a parabolic basin: both its shores move all the time, and its surface stays flat.',
  checks: [
    {
      id: 'A07',
      title: 'Swing in a parabolic basin',
      source: 'Thacker 1981 (from memory); parameters of Delestre et al. 2013',
      setting: GENTLE,
      run: planar,
    },
    {
      id: 'A07b',
      title: 'The same with linear friction',
      source: 'Sampson, Easton & Singh 2003 (from memory)',
      setting: `${GENTLE}; 200 mesh cells`,
      run: rubbed,
    },
  ],
};
