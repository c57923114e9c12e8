import type { CaseRun } from '../caseRun';
import type { Outcome } from '../check';
import {
  bump,
  bumpWithJump,
  criticalDepth,
  depthOfEnergy,
  jumpPlace,
  subcriticalBump,
  transcriticalBump,
} from '../exact/steady';
import { atLeast, atMost, type Finding, missed, near, nearBy, reported } from '../finding';
import { centres, depthError, fittedOrder } from '../measure';
import { climb, dischargeSpread, errorOf, plotOf, type Stream, settle } from './stream';

export const BUMP_STRETCH = 30;
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

export function slowBump(): Outcome {
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

export function fastBump(): Outcome {
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

export function jumpBump(): Outcome {
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
