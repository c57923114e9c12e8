import type { PourRecord } from '$src/core/pour/record';
import type { Check, Family, Outcome } from './check';
import { atMost, type Finding, missed, near, nearBy, reported } from './finding';
import { HELD_BACK, WHOLE_SKIN } from './heldBack';
import { pourFolds } from './pourFolds';
import {
  computePour,
  FLUSH_SECTION,
  PIT_SECTION,
  pourPlan,
  REFERENCE_POURS,
  type ReferencePour,
} from './referencePours';
import { levelArrival } from './slowTilt';

const OTHER_CODE =
  'cross-check between two codes of the same scheme, not truth: figures of an earlier code at 400 mesh cells';

const tillHome = new Map<string, PourRecord>();

/** A reference pour until its front should be home and a little more. Two checks read the finer ones: each is run once. */
function runTillHome(pour: ReferencePour, meshCells: number, gate: boolean): PourRecord {
  const name = `${pour.name} ${meshCells} ${gate}`;
  const end = pour.arrival[gate ? 1 : 0] + 0.5;
  const record = tillHome.get(name) ?? computePour(pourPlan(pour, meshCells, gate), (time) => time > end);
  tillHome.set(name, record);
  return record;
}

function arrivals(): Outcome {
  const findings: Finding[] = [];
  for (const pour of REFERENCE_POURS)
    for (const gate of [false, true]) {
      const expected = pour.arrival[gate ? 1 : 0];
      const record = runTillHome(pour, 400, gate);
      const found = record.figures.arrivalTime ?? Number.NaN;
      const what = `arrival at the die end, ${pour.name}, gate ${gate ? 'on' : 'off'}`;
      const off = `${what}: ${found.toFixed(3)} s for ${expected} s, off by`;
      findings.push(
        gate
          ? missed(off, Math.abs(found - expected), 0.02, HELD_BACK[pour.name]!, 's', WHOLE_SKIN)
          : nearBy(what, expected, found, 0.02, 's'),
      );
      if (gate && pour.name === 'P3') findings.push(besideLevelFill(pour, found));
    }
  return { findings, plots: [] };
}

function besideLevelFill(pour: ReferencePour, found: number): Finding {
  const angle = levelArrival(pour, true);
  const what = `arrival, ${pour.name}, gate on, beside the capillary level fill's at ${angle.toFixed(2)}°`;
  return reported(
    what,
    (pour.start - angle) / pour.rate,
    found,
    's',
    'a pour at 15°/s lags the level fill by the time its metal takes to follow',
  );
}

/** The front is read in millimetres, never in mesh cells: its figures must not move with the mesh. */
function refinement(): Outcome {
  const findings: Finding[] = [];
  for (const pour of REFERENCE_POURS)
    for (const gate of [false, true]) {
      const [coarse, fine] = [200, 400].map((cells) => runTillHome(pour, cells, gate).figures);
      const what = `${pour.name}, gate ${gate ? 'on' : 'off'}, 200 over 400 cells`;
      findings.push(
        near(`arrival, ${what}`, 1, coarse!.arrivalTime! / fine!.arrivalTime!, 0.03),
        near(`peak front speed, ${what}`, 1, coarse!.peakFrontSpeed! / fine!.peakFrontSpeed!, 0.08),
      );
    }
  return { findings, plots: [] };
}

/** What a refinement still moves must shrink: by then the arrival is a figure of the pour and not of its mesh. */
function convergence(): Outcome {
  const findings = REFERENCE_POURS.flatMap((pour) =>
    [false, true].flatMap((gate): Finding[] => {
      const [first, second, third, last] = [100, 200, 400, 800].map(
        (cells) => runTillHome(pour, cells, gate).figures.arrivalTime!,
      );
      const what = `${pour.name}, gate ${gate ? 'on' : 'off'}`;
      const moved = [second! - first!, third! - second!, last! - third!].map(Math.abs);
      // Figures are read every 2 ms.
      return [
        atMost(`arrival, ${what}, 400 from 800 cells, share`, moved[2]! / last!, 0.01),
        atMost(`the same over 100 from 200 cells`, moved[2]! / Math.max(moved[0]!, 2e-3), 1),
      ];
    }),
  );
  return { findings, plots: [] };
}

/** Pours to the very end, one of them out of an overfull open basin. */
const WHOLE_POURS = [
  { name: 'pit, level start, 15°/s', section: PIT_SECTION, area: 2880, start: 0, rate: 15 },
  { name: 'pit, level start, 60°/s', section: PIT_SECTION, area: 2880, start: 0, rate: 60 },
  { name: 'flush basin, +30°, 15°/s', section: FLUSH_SECTION, area: 6900, start: 30, rate: 15 },
  { name: 'flush basin, +60°, 120°/s', section: FLUSH_SECTION, area: 6900, start: 60, rate: 120 },
  {
    name: 'flush basin turned back over its rim, 30°/s',
    section: FLUSH_SECTION,
    area: 9000,
    start: 60,
    rate: 30,
  },
];

function volume(): Outcome {
  const findings: Finding[] = [];
  let spilled = 0;
  for (const pour of WHOLE_POURS)
    for (const gate of [false, true]) {
      const record = computePour(pourPlan(pour, 100, gate));
      spilled = Math.max(spilled, record.figures.spilled / record.plan.volume);
      const whole = record.outcome.kind === 'stopped' ? Number.POSITIVE_INFINITY : record.health.volumeDrift;
      findings.push(
        atMost(`volume drift over the pour, ${pour.name}, gate ${gate ? 'on' : 'off'}`, whole, 1e-12),
      );
    }
  return {
    findings: [
      ...findings,
      {
        what: 'share spilled in the pour that spills most',
        expected: null,
        found: spilled,
        unit: '',
        low: 0.01,
        high: 1,
        bar: 'some, or spilled metal was not tested',
      },
    ],
    plots: [],
  };
}

const checks: readonly Check[] = [
  {
    id: 'volume',
    title: 'Volume over whole pours',
    source: 'conservation',
    setting: '100 mesh cells, start to standstill at −90°, spilled metal counted',
    run: volume,
  },
  {
    id: 'P2–P5',
    title: 'Arrival of the reference pours',
    source: OTHER_CODE,
    setting: '400 mesh cells, gate off and on',
    run: arrivals,
  },
  {
    id: 'P2–P5 folds',
    title: 'Folds of the reference pours',
    source: OTHER_CODE,
    setting: '400 mesh cells; what that code found robust from 200 to 1600 cells',
    run: pourFolds,
  },
  {
    id: 'refine',
    title: 'Front figures on two meshes',
    source: 'a converged figure does not depend on the mesh',
    setting: 'reference pours at 200 and 400 mesh cells, gate off and on; bars of the project',
    run: refinement,
  },
  {
    id: 'converge',
    title: 'Arrival as the mesh is refined',
    source: 'a converged figure does not depend on the mesh',
    setting: 'reference pours at 100, 200, 400 and 800 mesh cells, gate off and on; bars of the project',
    run: convergence,
  },
];

export const pours: Family = {
  name: 'Whole pours',
  about: 'Pours as the page runs them: watchers, tilt, openings and all.',
  checks,
};
