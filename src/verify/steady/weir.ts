import { GRAVITY } from '$src/core/gravity';
import { fillLevel, runTo, startCase } from '../caseRun';
import { channelSection } from '../channel';
import type { Outcome } from '../check';
import { near } from '../finding';
import { settleDepths } from '../measure';

/** Metal rising over a vertical step passes at no more than critical flow: q = (2E/3)^1.5 √g over the step. */
export function weir(): Outcome {
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
