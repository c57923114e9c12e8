import { fillDepth, runTo, setSpeed, startCase } from '../caseRun';
import { channelSection } from '../channel';
import type { Outcome } from '../check';
import { normalDepth } from '../exact/steady';
import { near } from '../finding';
import { settleDepths } from '../measure';

/** A stream on a slope, begun too deep, must settle at the depth where friction balances gravity. */
export function evenFlow(): Outcome {
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
