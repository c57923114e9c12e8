import { GRAVITY } from '$src/core/gravity';
import { fillDepth, runTo, setSpeed, startCase } from '../caseRun';
import { channelSection } from '../channel';
import type { Outcome } from '../check';
import { boreFroude, conjugateRatio, stoppedStream } from '../exact/steady';
import { type Finding, near, nearBy } from '../finding';
import { centres, mean, settleDepths } from '../measure';

/** A stream stopped by a wall: the bore that runs back must satisfy Bélanger in its own frame. */
export function stopped(): Outcome {
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
export function boreLimits(): Outcome {
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
