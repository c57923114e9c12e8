import { expect, test, vi } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import type { PointResult } from '$src/report/study/region';
import { StudyPool } from '$src/ui/study/studyPool';

const plan = {} as PourPlan;
const known: PointResult = { failed: 'kept from an earlier visit' };

test('a point kept from an earlier visit is not run, nor does it wait for the pours of the page', async () => {
  const makeClient = vi.fn();
  const stored = { get: async () => known, put: vi.fn() };
  const pool = new StudyPool({ makeClient, atOnce: 2, isBusy: () => true, stored });
  expect(await pool.result(plan, 'a')).toBe(known);
  expect(makeClient).not.toHaveBeenCalled();
  expect(stored.put).not.toHaveBeenCalled();
});

test('an unknown point waits for the pours of the page', async () => {
  const makeClient = vi.fn().mockRejectedValue(new Error('no worker'));
  const stored = { get: async () => null, put: vi.fn() };
  let isBusy = true;
  const pool = new StudyPool({ makeClient, atOnce: 2, isBusy: () => isBusy, stored });
  const result = pool.result(plan, 'a');
  await new Promise((resolve) => setTimeout(resolve, 30));
  expect(makeClient).not.toHaveBeenCalled();
  isBusy = false;
  expect(await result).toEqual({ failed: 'no worker' });
  expect(stored.put).not.toHaveBeenCalled();
});
