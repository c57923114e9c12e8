import { proxy, type Remote, wrap } from 'comlink';
import { afterEach, expect, test, vi } from 'vitest';
import { createPourApi, type Simulate } from '$src/worker/pourApi';
import type { PourApi } from '$src/worker/protocol';
import { asWorker, ChannelWorker } from './channelWorker';
import { anyPlan, endless, fakeRecord, fakeSimulate, instant, noReport } from './fakePour';

afterEach(() => vi.restoreAllMocks());

const noSketch = (): never => {
  throw new Error('No sketch is asked for here.');
};

/** Calls the solver through real messages, and closes the channel when the test is over. */
async function throughMessages(
  simulate: Simulate,
  use: (solver: Remote<PourApi>) => Promise<void>,
): Promise<void> {
  const worker = new ChannelWorker(createPourApi(simulate, noSketch));
  try {
    await use(wrap<PourApi>(asWorker(worker)));
  } finally {
    worker.terminate();
  }
}

test('a record comes through the messages as the solver made it', () =>
  throughMessages(instant, async (solver) => {
    const received = await solver.run(anyPlan, proxy(noReport));
    expect(received).toEqual(fakeRecord({ kind: 'filled and quiet' }, 0));
  }));

test('the buffers of a record are handed over, not copied', async () => {
  let made: ReturnType<typeof fakeRecord> | undefined;
  const keeping: Simulate = function* (plan) {
    made = yield* instant(plan);
    return made;
  };
  await throughMessages(keeping, async (solver) => {
    const received = await solver.run(anyPlan, proxy(noReport));
    expect(received.frames.time).toHaveLength(64);
    expect(made?.frames.time).toHaveLength(0);
    expect(made?.frames.level.data).toHaveLength(0);
  });
});

test('progress comes at most about twenty times a second', async () => {
  // A clock of its own, on which every step of the pour takes 10 ms.
  let clock = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => clock);
  const pour: Simulate = function* () {
    for (let step = 1; step <= 60; step++) {
      clock += 10;
      yield { time: step, done: 0, inclination: 0, filledShare: 0 };
    }
    return fakeRecord({ kind: 'filled and quiet' }, 60);
  };
  const reported: number[] = [];
  await createPourApi(pour, noSketch).run(anyPlan, () => reported.push(clock));
  const gaps = reported.slice(1).map((at, i) => at - reported[i]!);
  expect(reported.length).toBeGreaterThanOrEqual(8);
  expect(Math.min(...gaps)).toBeGreaterThanOrEqual(50);
});

test('a stop is heard while the pour computes, and keeps what is done', () =>
  throughMessages(endless, async (solver) => {
    let underWay: () => void;
    const begun = new Promise<void>((resolve) => {
      underWay = resolve;
    });
    const running = solver.run(
      anyPlan,
      proxy(() => underWay()),
    );
    await begun;
    await solver.stop();
    const record = await running;
    expect(record.outcome).toEqual({ kind: 'stopped by the user' });
    expect(record.health.steps).toBeGreaterThan(0);
  }));

test('a stop meant for one pour does not end the next', () =>
  throughMessages(fakeSimulate(60), async (solver) => {
    await solver.stop();
    const record = await solver.run(anyPlan, proxy(noReport));
    expect(record.outcome).toEqual({ kind: 'filled and quiet' });
  }));

test("the solver's own refusal reaches the caller as an error with its words", () => {
  const refusing: Simulate = () => {
    throw new Error('meshCells is 3, it must be 20 to 2000');
  };
  return throughMessages(refusing, async (solver) => {
    await expect(solver.run(anyPlan, proxy(noReport))).rejects.toThrow(
      'meshCells is 3, it must be 20 to 2000',
    );
  });
});
