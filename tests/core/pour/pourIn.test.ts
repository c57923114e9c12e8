import { describe, expect, it } from 'vitest';
import { cosine, sine } from '$src/core/elementary/sine';
import { Flow, totalVolume } from '$src/core/flow/flow';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { buildMesh } from '$src/core/mesh/mesh';
import { liquidOf } from '$src/core/metal/liquidOf';
import { metalNamed } from '$src/core/metal/metals';
import { pourIn } from '$src/core/pour/pourIn';
import { runPour } from '$src/core/pour/runPour';
import { wholeVolume } from '$src/core/section/cavity';
import { flushBasin, hingeArm, pitBehindSill, taperedLever, thinWall } from '$src/core/section/shapes';
import { fromDegrees } from '$src/core/units';
import { armPour } from './armPour';

const SHAPES = {
  flush: flushBasin(),
  pit: pitBehindSill(),
  arm: hingeArm(),
  lever: taperedLever(),
  thin: thinWall(),
};
const STAND = standOf(liquidOf(metalNamed('A356')!));

describe.each(Object.entries(SHAPES))('metal ladled into the shape %s', (_, section) => {
  it.each([20, 40, 100])(
    'is all there on %i mesh cells, however little it is and however steep the start',
    (cells) => {
      const mesh = buildMesh(section, cells);
      for (const degrees of [75, 60, 30, 0, -30, -60, -85, -95])
        for (const share of [0.001, 0.005, 0.02, 0.1, 0.6])
          for (const stand of [null, STAND]) {
            const start = fromDegrees(degrees);
            const volume = share * wholeVolume(section);
            const { pools, spilled } = levelPath(section, volume, start, start, stand);
            const flow = new Flow(mesh);
            pourIn(flow, mesh, pools[0]!, sine(start), Math.abs(cosine(start)));
            const off = (totalVolume(flow) + spilled[0]!) / volume - 1;
            expect([degrees, share, Math.abs(off) < 1e-12]).toEqual([degrees, share, true]);
          }
    },
  );
});

it('a pour is held to the metal that was asked for', () => {
  const volume = 5e-6;
  const pour = runPour({ ...armPour(20), section: SHAPES.flush, volume });
  let step = pour.next();
  while (!step.done) step = pour.next();
  const { health, frames } = step.value;
  expect(health.volumeDrift).toBeLessThan(1e-12);
  const first = frames.depth.data.slice(0, frames.depth.shape[1]);
  expect(Math.max(...first)).toBeGreaterThan(0);
});
