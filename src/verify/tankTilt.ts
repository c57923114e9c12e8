import { GRAVITY } from '$src/core/gravity';
import { type BodyMotion, type CaseRun, fillDepth, runTo, setSpeed, startCase } from './caseRun';
import { channelSection } from './channel';
import type { Outcome } from './check';
import { atMost, type Finding, near } from './finding';
import { settleDepths } from './measure';

/** Of the tank of all sloshes [m]. */
export const LENGTH = 0.4;
const ALPHA = 1e-4;
const TANK_DEPTH = 0.02;
const WAVE = Math.sqrt(GRAVITY * TANK_DEPTH);

const tilting = (angle: (t: number) => number): BodyMotion => ({
  inclinationAt: (t) => -angle(t),
  rateAt: () => 0,
  accelerationAt: () => 0,
});

/** Rise of the metal at the far wall [m], taken from the two last cells to the wall. */
function wallRise(run: CaseRun, alpha: number): number {
  settleDepths(run);
  const last = run.mesh.cells - 1;
  return (
    (run.flow.depth[last]! + (run.flow.depth[last]! - run.flow.depth[last - 1]!) / 2 - TANK_DEPTH) / alpha
  );
}

/** Rise at the wall over the tilt angle after a sudden tilt: a triangle between 0 and twice the static rise. */
export function stepRise(t: number): number {
  const period = (2 * LENGTH) / WAVE;
  const phase = t - period * Math.floor(t / period);
  return phase < period / 2 ? WAVE * phase : WAVE * (period - phase);
}

/** The same for any motion that starts from 0: step responses added up, by Simpson over `pieces` pieces. */
export function rampRise(t: number, rate: (t: number) => number): number {
  const pieces = 4000;
  let sum = 0;
  for (let k = 0; k < pieces; k++)
    sum += rate((t * (k + 0.5)) / pieces) * stepRise(t - (t * (k + 0.5)) / pieces);
  return (sum * t) / pieces;
}

export function startUp(): Outcome {
  const findings: Finding[] = [];
  const omega = (Math.PI * WAVE) / LENGTH / 2;
  const laws = [
    { name: 'sudden tilt', angle: () => ALPHA, exact: stepRise, room: 0.01, times: [0.25, 0.5, 0.75, 1.5] },
    {
      name: 'even turn',
      angle: (t: number) => ALPHA * t,
      exact: (t: number) => rampRise(t, () => 1),
      room: 0.01,
      times: [0.5, 1, 1.5, 2],
    },
    {
      name: 'swinging tilt',
      angle: (t: number) => ALPHA * Math.sin(omega * t),
      exact: (t: number) => rampRise(t, (s) => omega * Math.cos(omega * s)),
      room: 0.01,
      times: [0.5, 1, 1.5, 2],
    },
  ];
  for (const { name, angle, exact, room, times } of laws) {
    const run = startCase({
      section: channelSection({ length: LENGTH, cells: 200, roof: 0.1 }),
      meshCells: 200,
      motion: tilting(angle),
      longestStep: 0.5e-3,
    });
    fillDepth(run, () => TANK_DEPTH);
    for (const time of times) {
      runTo(run, time);
      findings.push(
        near(
          `rise at the wall over the angle, ${name}, ${time} s`,
          exact(time),
          wallRise(run, ALPHA),
          room,
          'm',
        ),
      );
    }
  }
  return { findings, plots: [] };
}

/** Periodic answer of the tank to a swinging tilt, started on the exact solution. */
export function swinging(): Outcome {
  const first = (Math.PI * WAVE) / LENGTH;
  const findings = [0.2, 0.5, 0.8, 1.5].map((ratio) => {
    const omega = ratio * first;
    const half = (omega * LENGTH) / (2 * WAVE);
    const run = startCase({
      section: channelSection({ length: LENGTH, cells: 200, roof: 0.1 }),
      meshCells: 200,
      motion: tilting((t) => ALPHA * Math.sin(omega * t)),
      longestStep: 0.25e-3,
    });
    fillDepth(run, () => TANK_DEPTH);
    setSpeed(
      run,
      (x) => ALPHA * (GRAVITY / omega) * (Math.cos((omega * (x - LENGTH / 2)) / WAVE) / Math.cos(half) - 1),
    );
    runTo(run, (1.25 * 2 * Math.PI) / omega);
    return near(
      `rise at the wall over the angle, ${ratio} of the first mode`,
      (WAVE / omega) * Math.tan(half),
      wallRise(run, ALPHA),
      0.005,
      'm',
    );
  });
  return { findings, plots: [] };
}

export function rest(): Outcome {
  const run = startCase({
    section: channelSection({ length: LENGTH, cells: 100, roof: 0.1 }),
    meshCells: 100,
  });
  fillDepth(run, () => TANK_DEPTH);
  runTo(run, 0.5);
  settleDepths(run);
  return {
    findings: [atMost('rise at the wall without any tilt', Math.abs(wallRise(run, 1)), 1e-14, 'm')],
    plots: [],
  };
}
