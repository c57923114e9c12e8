import { expect, test } from 'vitest';
import { Flow } from '$src/core/flow/flow';
import { makeHeat } from '$src/core/heat/heat';
import { buildMesh } from '$src/core/mesh/mesh';
import type { PourPlan } from '$src/core/pour/plan';
import { watchHeat } from '$src/core/pour/watchHeat';
import type { Sample } from '$src/core/watch/sample';
import { channel, HEAT } from '../heat/pourWithHeat';

/** Seconds that a front is said to stand stiff after 1.5 s in one place, when these mesh cells of 2 mm are frozen. */
function stiffFor(front: number, frozen: readonly number[]): number {
  const section = channel(0.1, 0.01, 0.05);
  const mesh = buildMesh(section, 50);
  const flow = new Flow(mesh);
  for (let i = 0; i < mesh.cells && mesh.facePlace[i]! < front; i++) {
    flow.volume[i] = mesh.volume[i]!;
    flow.depth[i] = 0.01;
  }
  const heat = makeHeat({ ...HEAT, regions: [HEAT.regions[1]!] }, flow, mesh, [0.1], 1);
  heat.solid.fill(0);
  for (const i of frozen) heat.solid[i] = 1;
  const watch = watchHeat({ section, heat: HEAT } as unknown as PourPlan, flow, heat, mesh);
  for (let k = 1; k <= 751; k++)
    watch.look({ time: k * 2e-3, front, inclination: 0, dieLength: 0.1 } as unknown as Sample);
  return watch.stiffFor();
}

const last = (count: number, end: number) => Array.from({ length: count }, (_, k) => end - 1 - k);

test('a front frozen over 10 mm on its way stands stiff; one frozen mesh cell does not hold it', () => {
  expect(stiffFor(0.05, last(6, 25))).toBeCloseTo(1.5, 6);
  expect(stiffFor(0.05, last(1, 25))).toBe(0);
});

test('a front that has reached the die end does not stand: the rest of the die fills behind it', () => {
  expect(stiffFor(0.1, last(6, 50))).toBe(0);
});
