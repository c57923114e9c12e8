import { expect, test, vi } from 'vitest';
import { DEFAULT_COMPUTATION, type PourPlan } from '$src/core/pour/plan';
import type { FrontSketch } from '$src/core/pour/record';
import { FrontSketches } from '$src/ui/live/frontSketches.svelte';

const plan = (volume: number) => ({ volume, computation: DEFAULT_COMPUTATION }) as PourPlan;
const sketchOf = (volume: number) => ({ arrivalTime: volume }) as FrontSketch;

/** A client whose runs end when the test says so. */
function slowClient() {
  const asked: { plan: PourPlan; end: () => void }[] = [];
  const client = {
    front: (wanted: PourPlan) =>
      new Promise<FrontSketch>((resolve) =>
        asked.push({ plan: wanted, end: () => resolve(sketchOf(wanted.volume)) }),
      ),
    close: () => undefined,
  };
  return { asked, sketches: new FrontSketches(async () => client) };
}

test('of many asks for one pour the one under way is finished, then the newest is run, and none between', async () => {
  const { asked, sketches } = slowClient();
  sketches.ask('pour', plan(1), 'one');
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  sketches.ask('pour', plan(2), 'two');
  sketches.ask('pour', plan(3), 'three');
  asked[0]!.end();
  await vi.waitFor(() => expect(asked).toHaveLength(2));
  expect(sketches.sketched.get('pour')?.planHash).toBe('one');
  expect(asked[1]!.plan.volume).toBe(3);
  asked[1]!.end();
  await vi.waitFor(() => expect(sketches.sketched.get('pour')?.planHash).toBe('three'));
  expect(asked).toHaveLength(2);
});

test('two pours take turns', async () => {
  const { asked, sketches } = slowClient();
  sketches.ask('a', plan(1), 'a1');
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  sketches.ask('b', plan(2), 'b1');
  sketches.ask('a', plan(3), 'a2');
  asked[0]!.end();
  await vi.waitFor(() => expect(asked).toHaveLength(2));
  expect(asked[1]!.plan.volume).toBe(2);
});

test('what was not begun when the hand lets go is never run', async () => {
  const { asked, sketches } = slowClient();
  sketches.hold();
  sketches.ask('pour', plan(1), 'one');
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  sketches.ask('pour', plan(2), 'two');
  sketches.release();
  asked[0]!.end();
  await vi.waitFor(() => expect(sketches.sketched.get('pour')?.planHash).toBe('one'));
  expect(asked).toHaveLength(1);
});

test('sketches are coarse and without heat', async () => {
  const { asked, sketches } = slowClient();
  sketches.ask('pour', { ...plan(1), heat: {} } as PourPlan, 'one');
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  expect(asked[0]!.plan.computation.meshCells).toBe(50);
  expect(asked[0]!.plan.heat).toBeNull();
});
