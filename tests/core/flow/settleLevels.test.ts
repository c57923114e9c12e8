import fc from 'fast-check';
import { expect, test } from 'vitest';
import { totalVolume } from '$src/core/flow/flow';
import { reduceRows, settleLevels } from '$src/core/flow/levelSystem';
import { SOLVE_TOLERANCE } from '$src/core/flow/settings';
import { highestLevel, lowestLevel } from '$src/core/mesh/levels';
import { fromDegrees } from '$src/core/units';
import { type CaseRun, fillLevel, runTo, startCase } from '$src/verify/caseRun';
import { sections, tries } from './randomPours';

/** Updates of one level solve from disturbed levels; how many were judged settled, and the residuals found after those. */
function judged(run: CaseRun, disturbance: number): number[] {
  const { flow, mesh, largestCell } = run;
  const tolerance = SOLVE_TOLERANCE * largestCell;
  for (let i = 0; i < mesh.cells; i++) flow.level[i] = flow.level[i]! + disturbance * Math.sin(i);
  const residuals: number[] = [];
  for (let update = 0; update < 12; update++) {
    if (reduceRows(flow, mesh) <= tolerance) break;
    if (settleLevels(flow, tolerance)) residuals.push(reduceRows(flow, mesh) / tolerance);
  }
  return residuals;
}

test('an update judged to be the last leaves no more than the tolerance, in any section', () => {
  let settled = 0;
  fc.assert(
    fc.property(
      sections,
      fc.double({ min: -50, max: 60, noNaN: true }),
      fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      fc.double({ min: 1e-9, max: 1e-4, noNaN: true }),
      (section, degrees, share, disturbance) => {
        const run = startCase({ section, meshCells: 60, inclination: fromDegrees(degrees) });
        const low = lowestLevel(run.flow.levels);
        const high = highestLevel(run.flow.levels);
        fillLevel(run, (x) => low + share * (high - low) * (x > section.mouth ? 0.8 : 1));
        expect(totalVolume(run.flow)).toBeGreaterThan(0);
        for (let time = 0.01; time < 0.1; time += 0.01) {
          runTo(run, time);
          const residuals = judged(run, disturbance);
          settled += residuals.length;
          for (const residual of residuals) expect(residual).toBeLessThanOrEqual(1);
        }
      },
    ),
    tries(40),
  );
  expect(settled).toBeGreaterThan(100);
});
