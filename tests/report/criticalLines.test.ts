import { expect, test } from 'vitest';
import { METRIC } from '$src/core/units';
import { criticalLines } from '$src/report/criticalLines';
import { inventedPlan, inventedRecord } from './inventedRecord';

const pour = (name: string, criticalSpeed: number, metal?: string) => ({
  name,
  record: inventedRecord({
    plan: { ...inventedPlan, liquid: { ...inventedPlan.liquid, criticalSpeed } },
  }),
  ...(metal && { metal }),
});

test('each metal has its own critical line and its name, the lowest first', () => {
  const lines = criticalLines(
    [pour('One', 0.49, 'A356'), pour('Two', 0.4, 'Bronze'), pour('Three', 0.49, 'A356')],
    METRIC,
  );
  expect(lines.map(({ label }) => label)).toEqual(['critical 0.40 m/s, Bronze', 'critical 0.49 m/s, A356']);
  expect(lines.map(({ value }) => value)).toEqual([0.4, 0.49]);
});

test('pours of one metal share a line that needs no name; a metal without one is named by its pour', () => {
  expect(criticalLines([pour('One', 0.49, 'A356'), pour('Two', 0.49, 'A356')], METRIC)).toMatchObject([
    { label: 'critical 0.49 m/s' },
  ]);
  expect(criticalLines([pour('One', 0.49), pour('Two', 0.4)], METRIC)[0]!.label).toBe(
    'critical 0.40 m/s, Two',
  );
});
