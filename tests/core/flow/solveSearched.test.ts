import fc from 'fast-check';
import { expect, test } from 'vitest';
import { reduceCoupled } from '$src/core/flow/coupledRows';
import { makeGas } from '$src/core/flow/gas';
import { reduceRows } from '$src/core/flow/levelSystem';
import { SOLVE_TOLERANCE } from '$src/core/flow/settings';
import { solveSearched } from '$src/core/flow/solveSearched';
import { GRAVITY } from '$src/core/gravity';
import { highestLevel, lowestLevel } from '$src/core/mesh/levels';
import { fromDegrees } from '$src/core/units';
import { type CaseRun, fillLevel, runTo, startCase } from '$src/verify/caseRun';
import { sections, tries } from './randomPours';

/** Levels thrown far off, up to metres, the same way each time. */
function disturb({ flow, mesh }: CaseRun, metres: number): void {
  for (let i = 0; i < mesh.cells; i++) flow.level[i] = flow.level[i]! + metres * Math.sin(12.9898 * i);
  flow.before.set(flow.level);
}

const shots = fc.record({
  section: sections,
  degrees: fc.double({ min: -50, max: 60, noNaN: true }),
  share: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
  metres: fc.double({ min: 1e-6, max: 3, noNaN: true }),
  isVented: fc.boolean(),
});

test.each([false, true])('levels are found from anywhere, in any section; gas shut in: %s', (withGas) => {
  let shut = 0;
  fc.assert(
    fc.property(shots, ({ section, degrees, share, metres, isVented }) => {
      const run = startCase({ section, meshCells: 60, inclination: fromDegrees(degrees) });
      const { flow, mesh } = run;
      const vents = isVented ? [{ cell: mesh.cells - 1, area: 1e-5 }] : [];
      if (withGas) flow.gas = makeGas(mesh, vents, 2400, GRAVITY);
      const low = lowestLevel(flow.levels);
      const high = highestLevel(flow.levels);
      fillLevel(run, (x) => low + share * (high - low) * (x > section.mouth ? 0.8 : 1));
      const tolerance = SOLVE_TOLERANCE * run.largestCell;
      for (let time = 0.02; time < 0.1; time += 0.02) {
        runTo(run, time);
        // The rows of the step just done, once more from far off: gas has settled, so its pockets are taken as they are.
        disturb(run, metres);
        shut += flow.gas?.pockets.count ?? 0;
        expect(solveSearched(flow, mesh, tolerance, 0)).toBe(true);
        expect(reduceCoupled(flow, mesh)).toBeLessThanOrEqual(tolerance);
        if (!withGas) expect(reduceRows(flow, mesh)).toBeLessThanOrEqual(tolerance);
      }
    }),
    tries(60),
  );
  expect(shut > 30).toBe(withGas);
});
