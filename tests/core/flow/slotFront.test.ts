import { expect, test } from 'vitest';
import { liquidOf } from '$src/core/metal/liquidOf';
import { metalNamed } from '$src/core/metal/metals';
import { runPour } from '$src/core/pour/runPour';
import { THIN_WALL, thinWall } from '$src/core/section/shapes';
import { fromMillimetres } from '$src/core/units';
import { steady } from '../../books/sources/shop';

function arrival(meshCells: number): number {
  const metal = metalNamed('A356')!;
  const pour = runPour({
    section: thinWall({ ...THIN_WALL, wallHeight: fromMillimetres(4) }),
    liquid: liquidOf(metal),
    volume: 2e-4,
    tilt: steady(30, 20),
    heat: null,
    computation: { meshCells, capillaryGate: true, settlingTime: 0 },
  });
  let step = pour.next();
  while (!step.done) step = pour.next(step.value.time > 4 ? { stop: true } : undefined);
  return step.value.figures.arrivalTime ?? Number.POSITIVE_INFINITY;
}

/** A converged figure; before its skin was weighed against the whole column, a front here took half as long again on 800 cells. */
test('a front that fills a thin wall runs alike on 200, 400 and 800 mesh cells', () => {
  const fine = arrival(400);
  for (const cells of [200, 800]) expect(Math.abs(arrival(cells) / fine - 1)).toBeLessThan(0.04);
}, 60_000);
