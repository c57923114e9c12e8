import { expect, test } from 'vitest';
import { figureRows } from '$src/report/figures';
import { computePour, FLUSH_SECTION, pourPlan } from '$src/verify/referencePours';

const text = (rows: ReturnType<typeof figureRows>, key: string) => rows.find((row) => row.key === key)!.text;

test('metal ladled in up to the end wall has no arrival, and the report says it is not computed', () => {
  const plan = pourPlan({ section: FLUSH_SECTION, area: 6900, start: 0, rate: 15 }, 50, false);
  const record = computePour(plan, (time) => time > 0.5);
  expect(record.figures.firstFlow.kind).toBe('already in the die');
  expect(record.figures.stoodAtEnd).toBe(true);
  expect(record.figures.arrivalTime).toBeNull();
  const rows = figureRows(record);
  expect(text(rows, 'arrival_time_s')).toBe('not computed: while ladling');
  expect(text(rows, 'mouth_to_end_s')).toBe('not computed: while ladling');
});

test('metal ladled in part of the way arrives, but its way from the mouth is not computed', () => {
  const plan = pourPlan({ section: FLUSH_SECTION, area: 6900, start: 30, rate: 60 }, 50, false);
  const record = computePour(plan, (time) => time > 0.8);
  expect(record.figures.stoodAtEnd).toBe(false);
  expect(record.figures.arrivalTime).toBeGreaterThan(0.3);
  expect(text(figureRows(record), 'mouth_to_end_s')).toBe('not computed: while ladling');
});
