import { afterEach, expect, test, vi } from 'vitest';
import { createPourClient, type PourClient, type RunningPour } from '$src/worker/client';
import { createPourApi, type Simulate } from '$src/worker/pourApi';
import { asWorker, ChannelWorker } from './channelWorker';
import { anyPlan, endless, fakeSimulate, instant, noReport } from './fakePour';

/** Not the clock itself: what another test left computing in this process would wait for it for ever. */
const TIMERS = ['setInterval', 'clearInterval'] as const;

const noSketch = (): never => {
  throw new Error('No sketch is asked for here.');
};

let opened: ChannelWorker[] = [];
let client: PourClient | null = null;

afterEach(() => {
  vi.useRealTimers();
  client?.close();
  opened = [];
});

/** A client whose workers are channels; `null` for a worker that never answers. */
function clientOf(workers: number, simulate: Simulate | null): PourClient {
  client = createPourClient({
    workers,
    openWorker: () => {
      const worker = new ChannelWorker(simulate && createPourApi(simulate, noSketch));
      opened.push(worker);
      return asWorker(worker);
    },
  });
  return client;
}

const runAny = (on: PourClient): RunningPour => on.run(anyPlan, noReport);
const aMoment = (milliseconds = 60) => new Promise((resolve) => setTimeout(resolve, milliseconds));

test('no worker is opened before the first pour', async () => {
  const on = clientOf(2, instant);
  expect(opened).toHaveLength(0);
  await runAny(on).done;
  expect(opened).toHaveLength(1);
});

test('there are never more workers than asked for, and one is used again', async () => {
  const on = clientOf(2, fakeSimulate(20));
  const pours = Array.from({ length: 5 }, () => runAny(on).done);
  await Promise.all(pours);
  expect(opened).toHaveLength(2);
  await runAny(on).done;
  expect(opened).toHaveLength(2);
});

test('waiting pours are run in the order asked for', async () => {
  const on = clientOf(1, instant);
  const order: number[] = [];
  await Promise.all([1, 2, 3, 4].map((number) => runAny(on).done.then(() => order.push(number))));
  expect(order).toEqual([1, 2, 3, 4]);
});

test('a stopped pour resolves with what is done, under way or still waiting', async () => {
  const on = clientOf(1, endless);
  const underWay = runAny(on);
  const waiting = runAny(on);
  await aMoment();
  waiting.stop();
  underWay.stop();
  expect((await underWay.done).outcome.kind).toBe('stopped by the user');
  expect((await waiting.done).outcome.kind).toBe('stopped by the user');
});

test('when the worker file cannot be loaded, every pour is told so', async () => {
  const on = clientOf(1, null);
  const pours = [runAny(on).done, runAny(on).done];
  const told = Promise.all(pours.map((pour) => expect(pour).rejects.toThrow('could not be loaded')));
  await aMoment();
  opened[0]?.die();
  opened[1]?.die();
  await told;
  expect(opened).toHaveLength(2);
});

test('when the browser refuses to open a worker, the pour is told so', async () => {
  client = createPourClient({
    workers: 1,
    openWorker: () => {
      throw new DOMException('refused', 'SecurityError');
    },
  });
  await expect(runAny(client).done).rejects.toThrow('could not be loaded');
});

test('when a worker breaks off, its pour is told why and the next one gets a new worker', async () => {
  let calls = 0;
  const on = clientOf(1, (plan) => {
    calls += 1;
    return calls === 1 ? endless(plan) : instant(plan);
  });
  const lost = expect(runAny(on).done).rejects.toThrow('out of memory');
  const next = runAny(on).done;
  await aMoment();
  opened[0]?.die('out of memory');
  await lost;
  expect((await next).outcome.kind).toBe('filled and quiet');
  expect(opened).toHaveLength(2);
  expect(opened[0]?.isTerminated).toBe(true);
});

test('a worker that falls silent is given up after a minute', async () => {
  vi.useFakeTimers({ toFake: [...TIMERS] });
  const told = expect(runAny(clientOf(1, null)).done).rejects.toThrow('has not answered for a minute');
  await vi.advanceTimersByTimeAsync(75_000);
  await told;
  expect(opened[0]?.isTerminated).toBe(true);
});

test('closing the client rejects what is under way and what waits', async () => {
  const on = clientOf(1, endless);
  const told = [runAny(on), runAny(on)].map((pour) => expect(pour.done).rejects.toThrow('given up'));
  await aMoment();
  on.close();
  await Promise.all(told);
  expect(opened[0]?.isTerminated).toBe(true);
});

test('a refusal of the solver rejects that pour only, and the worker goes on', async () => {
  let calls = 0;
  const on = clientOf(1, (plan) => {
    calls += 1;
    if (calls === 1) throw new Error('not a plan');
    return instant(plan);
  });
  const refused = expect(runAny(on).done).rejects.toThrow('not a plan');
  const next = runAny(on).done;
  await refused;
  expect((await next).outcome.kind).toBe('filled and quiet');
  expect(opened).toHaveLength(1);
});

test('a pour too large for the memory is told so and what to do, and the next one runs', async () => {
  let calls = 0;
  const on = clientOf(1, (plan) => {
    calls += 1;
    if (calls === 1) throw new RangeError('Array buffer allocation failed');
    return instant(plan);
  });
  const lost = expect(runAny(on).done).rejects.toThrow(/not enough memory.*fewer mesh cells.*run it again/);
  const next = runAny(on).done;
  await lost;
  expect((await next).outcome.kind).toBe('filled and quiet');
});

test('no report reaches the page after the record', async () => {
  let isOver = false;
  let late = 0;
  const pour = clientOf(1, fakeSimulate(120)).run(anyPlan, () => {
    if (isOver) late += 1;
  });
  await pour.done;
  isOver = true;
  await aMoment(120);
  expect(late).toBe(0);
});
