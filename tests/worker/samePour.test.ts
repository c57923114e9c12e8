import { proxy, wrap } from 'comlink';
import { expect, test } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runFront } from '$src/core/pour/runPour';
import { simulate } from '$src/core/pour/simulate';
import { fromDegrees } from '$src/core/units';
import { createPourApi } from '$src/worker/pourApi';
import type { PourApi } from '$src/worker/protocol';
import { asWorker, ChannelWorker } from './channelWorker';
import { noReport } from './fakePour';

/** A short quick pour over a flush floor, coarse: what matters here is that both ways give the same. */
const plan: PourPlan = {
  section: {
    floor: [
      { x: 0, y: 0 },
      { x: 0.32, y: 0 },
    ],
    roof: [
      { x: 0, y: 0.12 },
      { x: 0.12, y: 0.12 },
      { x: 0.12, y: 0.03 },
      { x: 0.32, y: 0.03 },
    ],
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [{ name: 'all', end: 0.32, width: 0.1 }],
    mouth: 0.12,
    cavities: 1,
    pivot: { x: 0.12, y: 0 },
    vents: [],
  },
  liquid: {
    density: 2400,
    viscosity: 1.3e-3,
    surfaceTension: 0.9,
    contactAngle: fromDegrees(150),
    criticalSpeed: 0.5,
  },
  volume: 4e-4,
  tilt: {
    kind: 'steady',
    start: fromDegrees(20),
    end: fromDegrees(-60),
    rate: fromDegrees(60),
    smoothing: 0.1,
    limits: {
      highestStart: fromDegrees(60),
      lowestEnd: fromDegrees(-90),
      slowest: fromDegrees(1),
      quickest: fromDegrees(120),
    },
  },
  computation: { meshCells: 60, capillaryGate: true, settlingTime: 0.5 },
};

function runHere(): PourRecord {
  const pour = simulate(plan);
  let step = pour.next();
  while (!step.done) step = pour.next();
  return step.value;
}

/** What both tests set beside the worker's. */
const direct = runHere();

/** Every number of a record down to its last bit. */
const bitsOf = (record: PourRecord): string =>
  JSON.stringify(record, (_, value: unknown) => {
    if (ArrayBuffer.isView(value))
      return Buffer.from(value.buffer, value.byteOffset, value.byteLength).toString('base64');
    return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;
  });

test('a pour in a worker gives the very record of a direct run, also when the worker is used again', async () => {
  const worker = new ChannelWorker(createPourApi(simulate, runFront));
  const solver = wrap<PourApi>(asWorker(worker));
  const bits = bitsOf(direct);
  const first = bitsOf(await solver.run(plan, proxy(noReport)));
  const second = bitsOf(await solver.run(plan, proxy(noReport)));
  worker.terminate();
  expect(bits.length).toBeGreaterThan(10_000);
  expect(first).toBe(bits);
  expect(second).toBe(bits);
});

test('a stopped pour keeps the part that is done', async () => {
  const worker = new ChannelWorker(createPourApi(simulate, runFront));
  const solver = wrap<PourApi>(asWorker(worker));
  const fine = { ...plan, computation: { ...plan.computation, meshCells: 1200 } };
  const running = solver.run(fine, proxy(noReport));
  await new Promise((resolve) => setTimeout(resolve, 50));
  await solver.stop();
  const partial = await running;
  worker.terminate();
  expect(partial.outcome).toEqual({ kind: 'stopped by the user' });
  expect(partial.series.time.length).toBeGreaterThan(0);
  expect(partial.series.time.at(-1)).toBeLessThan(direct.series.time.at(-1) ?? 0);
});
