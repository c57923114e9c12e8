import { GRAVITY } from '$src/core/gravity';
import { fromDegrees } from '$src/core/units';
import { type CaseRun, fillDepth, runTo, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Family, Outcome } from './check';
import { slopeDamBreak } from './exact/damBreak';
import { atLeast, atMost, type Finding, near } from './finding';
import { centres, depthError, fittedOrder, settleDepths } from './measure';

/** Place of the middle of the metal, along the axis [m]. */
function middleOf(run: CaseRun): number {
  let moment = 0;
  let volume = 0;
  centres(run).forEach((x, i) => {
    moment += x * run.flow.volume[i]!;
    volume += run.flow.volume[i]!;
  });
  return moment / volume;
}

/**
 * A short film let go on a floor at β to a die axis that itself lies at φ, metal thin enough that pressure between
 * its ends does not matter to its middle: the middle must travel g sin(φ+β) t²/2 along the floor.
 */
function travel(
  beta: number,
  inclination: number,
  cells: number,
): { found: number; exact: number; speed: number } {
  const slope = Math.tan(beta);
  const length = 1;
  const total = beta + inclination;
  const run = startCase({
    section: channelSection({ length, cells, bed: (x) => slope * x, roof: 3 }),
    meshCells: cells,
    inclination,
  });
  const start = total < 0 ? 0.2 : 0.8;
  fillDepth(run, (x) => 0.5e-3 * Math.max(0, 1 - ((x - start) / 0.1) ** 2));
  const before = middleOf(run);
  const time = 0.2;
  runTo(run, time);
  const moved = (middleOf(run) - before) / Math.cos(beta);
  return { found: moved, exact: (-GRAVITY * Math.sin(total) * time * time) / 2, speed: momentumSpeed(run) };
}

function momentumSpeed(run: CaseRun): number {
  let momentum = 0;
  let mass = 0;
  for (let j = 1; j < run.mesh.cells; j++) {
    const metal = (run.flow.volume[j - 1]! + run.flow.volume[j]!) / 2;
    momentum += metal * run.flow.speed[j]!;
    mass += metal;
  }
  return momentum / mass;
}

function inclinedFloors(): Outcome {
  const findings: Finding[] = [];
  for (const betaDegrees of [-45, -20, 20, 45])
    for (const inclinationDegrees of [0, -15, 15]) {
      const { found, exact } = travel(fromDegrees(betaDegrees), fromDegrees(inclinationDegrees), 200);
      findings.push(
        near(
          `travel in 0.2 s, floor at ${betaDegrees}° to the axis, axis at ${inclinationDegrees}°`,
          exact,
          found,
          0.01,
          'm',
        ),
      );
    }
  return { findings, plots: [] };
}

/** Speed gained over a fall, from rest without friction. */
function slopeSpeed(): Outcome {
  const findings = [5, 15, 30, 45, 60].map((degrees) => {
    const { speed, found } = travel(0, fromDegrees(-degrees), 200);
    return near(
      `speed after its own travel, ${degrees}°`,
      Math.sqrt(2 * GRAVITY * found * Math.sin(fromDegrees(degrees))),
      speed,
      0.02,
      'm/s',
    );
  });
  return { findings, plots: [] };
}

const LAYER = 0.02;
const SLOPE_TIME = 0.3;
const SLOPE_LENGTH = 2.4;

function slopeRun(theta: number, cells: number): CaseRun {
  const run = startCase({
    section: channelSection({ length: SLOPE_LENGTH, cells, roof: 1.5 }),
    meshCells: cells,
    inclination: -theta,
    longestStep: 0.2 / cells,
  });
  fillDepth(run, (x) => (x < SLOPE_LENGTH / 2 ? LAYER : 0));
  runTo(run, SLOPE_TIME);
  settleDepths(run);
  return run;
}

function drySlope(): Outcome {
  const findings: Finding[] = [];
  const dam = SLOPE_LENGTH / 2;
  const cells = [100, 200, 400];
  let shown: CaseRun | null = null;
  for (const degrees of [5, 20]) {
    const theta = fromDegrees(degrees);
    const exact = (x: number) => slopeDamBreak(x, SLOPE_TIME, dam, LAYER, theta).depth;
    // The wall at the upper end sends its own wave down: only what it cannot have reached is judged.
    const clear = 0.75;
    const runs = cells.map((n) => slopeRun(theta, n));
    const errors = runs.map((run) => depthError(run, exact, clear));
    findings.push(
      atMost(`relative L1 of depth, ${degrees}°, 400 cells`, errors[2]!, 6e-3),
      atLeast(`observed order, ${degrees}°, fitted`, fittedOrder(cells, errors), 0.8),
    );
    const upstream = Math.round((cells[2]! * 0.8) / SLOPE_LENGTH);
    findings.push(
      atMost(
        `speed of the undisturbed layer off g sin θ t, ${degrees}°`,
        Math.abs(runs[2]!.flow.speed[upstream]! - GRAVITY * Math.sin(theta) * SLOPE_TIME),
        1e-10,
        'm/s',
      ),
    );
    shown = runs[1]!;
  }
  const x = centres(shown!);
  return {
    findings,
    plots: [
      {
        name: 'dry-slope',
        title: `Layer let go on a dry slope of 20°, 200 mesh cells`,
        xLabel: 'place down the slope, m',
        yLabel: 'depth, m',
        curves: [
          {
            name: 'exact',
            x,
            y: x.map((place) => slopeDamBreak(place, SLOPE_TIME, dam, LAYER, fromDegrees(20)).depth),
            look: 'line',
          },
          { name: 'computed', x, y: [...shown!.flow.depth], look: 'marks' },
        ],
      },
    ],
  };
}

export const films: Family = {
  name: 'Films and slopes',
  about: 'Metal running down floors that are not parallel to the die axis. Friction and gate are off.',
  checks: [
    {
      id: 'films',
      title: 'A film on an inclined floor',
      source: 'Newton’s second law: g sin(φ+β) t²/2 along the floor',
      setting: '0.5 mm film 200 mm long, 1 m floor, 200 mesh cells',
      run: inclinedFloors,
    },
    {
      id: 'B06',
      title: 'Speed at the foot of a slope',
      source: 'elementary mechanics: √(2 g l sin θ)',
      setting: 'the same film, axis turned',
      run: slopeSpeed,
    },
    {
      id: 'A06',
      title: 'Dam break of a layer on a dry slope',
      source: 'Mangeney, Heinrich & Roche 2000 (from memory); the accelerated frame is worked out here',
      setting: '20 mm layer, 0.3 s, 100 to 400 mesh cells, the step refined with the mesh',
      run: drySlope,
    },
  ],
};
