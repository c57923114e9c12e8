import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEFAULT_COMPUTATION, type PourPlan } from '$src/core/pour/plan';
import type { PourRecord, Progress } from '$src/core/pour/record';
import { PourQueue, type Wanted } from '$src/ui/pourQueue.svelte';
import type { PourClient } from '$src/worker/client';

/** Not the clock itself: what another test left computing in this process would wait for it for ever. */
const TIMERS = ['setTimeout', 'clearTimeout'] as const;

interface Asked {
  readonly plan: PourPlan;
  readonly onProgress: (progress: Progress) => void;
  readonly finish: (record: PourRecord) => void;
  readonly fail: (error: Error) => void;
  stopped: boolean;
}

/** A client that does nothing until the test says so. */
function handClient(): { client: PourClient; asked: Asked[] } {
  const asked: Asked[] = [];
  const run: PourClient['run'] = (plan, onProgress) => {
    let job!: Asked;
    const done = new Promise<PourRecord>((finish, fail) => {
      job = { plan, onProgress, finish, fail, stopped: false };
    });
    asked.push(job);
    return {
      done,
      stop: () => {
        job.stopped = true;
      },
    };
  };
  return { client: { run, close: () => {} }, asked };
}

const wanted = (planHash: string, meshCells = 400, isSeen = true): Wanted => ({
  planHash,
  plan: { computation: { ...DEFAULT_COMPUTATION, meshCells } } as PourPlan,
  isSeen,
});
const recordOf = (name: string) => ({ solver: name }) as PourRecord;
const settled = () => vi.advanceTimersByTimeAsync(1000);

beforeEach(() => {
  vi.useFakeTimers({ toFake: [...TIMERS] });
});
afterEach(() => {
  vi.useRealTimers();
});

test('pours out of the window run in full at once, after those in it', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  queue.want([wanted('in view'), wanted('below', 300, false)]);
  for (let run = 0; run < 3; run++) {
    await settled();
    asked[run]?.finish(recordOf(`run ${run}`));
  }
  await settled();
  expect(asked.map(({ plan }) => plan.computation.meshCells)).toEqual([100, 400, 300]);
  expect(queue.records.get('below')).toMatchObject({ record: { solver: 'run 2' }, coarse: false });
});

test('all pours on show run coarse, in order, before any runs in full', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  queue.want([wanted('a'), wanted('b')]);
  for (let run = 0; run < 4; run++) {
    await settled();
    asked[run]?.finish(recordOf(`run ${run}`));
  }
  await settled();
  expect(asked.map(({ plan }) => plan.computation.meshCells)).toEqual([100, 100, 400, 400]);
  expect(queue.records.get('a')).toMatchObject({ record: { solver: 'run 2' }, coarse: false });
  expect(queue.progress.size).toBe(0);
});

test('a first look at a pour on show does not wait for a full run under way, a second one does', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  queue.want([wanted('fine', 2000, false)]);
  await settled();
  queue.want([wanted('seen'), wanted('seen too'), wanted('fine', 2000, false)]);
  await settled();
  expect(asked.map(({ plan }) => plan.computation.meshCells)).toEqual([2000, 100]);
  asked[1]!.finish(recordOf('look'));
  await settled();
  expect(asked.map(({ plan }) => plan.computation.meshCells)).toEqual([2000, 100, 100]);
  asked[2]!.finish(recordOf('look'));
  await settled();
  expect(asked).toHaveLength(3);
  expect(asked[0]!.stopped).toBe(false);
});

test('a coarse record is shown and marked until the full one is there', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  queue.want([wanted('a')]);
  await settled();
  asked[0]!.finish(recordOf('coarse'));
  await settled();
  expect(queue.records.get('a')).toMatchObject({ coarse: true });
  expect(queue.progress.get('a')).toBe(0);
});

test('a run nobody wants any more is stopped, and its record is not served', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  queue.want([wanted('old')]);
  await settled();
  queue.want([wanted('new')]);
  expect(asked[0]!.stopped).toBe(true);
  asked[0]!.finish(recordOf('old'));
  await settled();
  expect(queue.records.has('old')).toBe(false);
  expect(asked).toHaveLength(2);
});

test('a change waits for the next one before it runs', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 2);
  queue.want([wanted('first')]);
  await settled();
  for (const planHash of ['b', 'c', 'd']) {
    queue.want([wanted(planHash)]);
    await vi.advanceTimersByTimeAsync(200);
  }
  expect(asked).toHaveLength(1);
  await settled();
  expect(asked).toHaveLength(2);
});

test('a stopped run keeps what it did and is not run again by itself', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  queue.want([wanted('a', 100)]);
  await settled();
  queue.stop('a');
  expect(asked[0]!.stopped).toBe(true);
  asked[0]!.finish(recordOf('partial'));
  await settled();
  expect(queue.records.get('a')).toMatchObject({ record: { solver: 'partial' }, stopped: true });
  expect(asked).toHaveLength(1);
  queue.again('a');
  await settled();
  expect(asked).toHaveLength(2);
});

test('a worker that cannot be loaded is told for every pour, and no record appears', async () => {
  const queue = new PourQueue(async () => {
    throw new Error('The solver could not be loaded.');
  }, 1);
  queue.want([wanted('a'), wanted('b')]);
  await settled();
  expect([...queue.failures]).toEqual([
    ['a', 'The solver could not be loaded.'],
    ['b', 'The solver could not be loaded.'],
  ]);
  expect(queue.records.size).toBe(0);
});

test('a pour that fails leaves the others to run', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  queue.want([wanted('a', 100), wanted('b', 100)]);
  await settled();
  asked[0]!.fail(new Error('The worker died.'));
  await settled();
  asked[1]!.finish(recordOf('b'));
  await settled();
  expect(queue.failures.get('a')).toBe('The worker died.');
  expect(queue.records.get('b')).toMatchObject({ coarse: false });
});

test('a pour whose worker died is told, is not run again by itself, and runs when asked', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 2);
  queue.want([wanted('a', 100), wanted('b', 100), wanted('c', 100)]);
  await settled();
  asked[0]!.fail(new Error('The worker broke off. Run it again.'));
  await settled();
  asked[1]!.finish(recordOf('b'));
  asked[2]!.finish(recordOf('c'));
  await settled();
  expect(queue.failures.get('a')).toContain('Run it again');
  expect([...queue.records.keys()]).toEqual(['b', 'c']);
  expect(queue.progress.size).toBe(0);
  expect(asked).toHaveLength(3);
  queue.again('a');
  await settled();
  asked[3]!.finish(recordOf('a at last'));
  await settled();
  expect(queue.failures.size).toBe(0);
  expect(queue.records.get('a')).toMatchObject({ record: { solver: 'a at last' } });
});

test('records nobody wants are let go of beyond a bound; wanted ones stay', async () => {
  const { client, asked } = handClient();
  const queue = new PourQueue(async () => client, 1);
  for (let run = 0; run < 40; run++) {
    queue.want([wanted('kept', 100), wanted(`other ${run}`, 100)]);
    await settled();
    for (const job of asked.splice(0)) job.finish(recordOf('done'));
    await settled();
    for (const job of asked.splice(0)) job.finish(recordOf('done'));
    await settled();
  }
  expect(queue.records.size).toBeLessThanOrEqual(26);
  expect(queue.records.has('kept')).toBe(true);
  expect(queue.records.has('other 39')).toBe(true);
  expect(queue.records.has('other 1')).toBe(false);
});

test('a record kept from an earlier visit is taken and not computed; a finished one is kept, a coarse or stopped one is not', async () => {
  const { client, asked } = handClient();
  const put: string[] = [];
  const stored = {
    get: async (planHash: string) => (planHash === 'known' ? recordOf('kept') : null),
    put: async (planHash: string) => void put.push(planHash),
  };
  const queue = new PourQueue(async () => client, 1, stored);
  queue.want([wanted('known'), wanted('new'), wanted('stopped', 100)]);
  await settled();
  expect(queue.records.get('known')).toMatchObject({ record: { solver: 'kept' }, coarse: false });
  for (let run = 0; run < 3; run++) {
    if (run === 1) queue.stop('stopped');
    asked[run]?.finish(recordOf(`run ${run}`));
    await settled();
  }
  expect(asked.map(({ plan }) => plan.computation.meshCells)).toEqual([100, 100, 400]);
  expect(put).toEqual(['new']);
});
