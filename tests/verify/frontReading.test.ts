import { expect, test } from 'vitest';
import { findFront } from '$src/core/watch/sample';
import { fillDepth, startCase } from '$src/verify/caseRun';
import { channelSection } from '$src/verify/channel';

/** Depth falls evenly from 20 mm at the start to nothing at 200 mm; it is 1 mm deep at 190 mm. */
const wedge = (x: number) => 0.02 * (1 - x / 0.2);

test.each([37, 100, 213, 400])(
  'the front of a wedge on %i mesh cells stands where it is 1 mm deep, within a mesh cell',
  (cells) => {
    const run = startCase({ section: channelSection({ length: 0.3, cells, roof: 0.1 }), meshCells: cells });
    fillDepth(run, wedge);
    expect(Math.abs(findFront(run.flow, run.mesh).path - 0.19)).toBeLessThanOrEqual(0.3 / cells);
  },
);

test('a front that creeps through a mesh cell is seen to move in it', () => {
  const cells = 30;
  const places = [0, 0.2, 0.4, 0.6, 0.8].map((share) => {
    const run = startCase({ section: channelSection({ length: 0.3, cells, roof: 0.1 }), meshCells: cells });
    fillDepth(run, (x) => (x < 0.1 + 0.01 * share ? 0.02 : 0));
    return findFront(run.flow, run.mesh).path;
  });
  for (let k = 2; k < places.length; k++) {
    expect(places[k]! - places[k - 1]!).toBeGreaterThan(0.001);
    expect(places[k]! - places[k - 1]!).toBeLessThan(0.003);
  }
});
