import { describe, expect, test } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { foldSpan } from '$src/report/foldSpan';
import { frontPlaceCurve } from '$src/report/series';
import { stepRange, stepValue } from '$src/report/step';
import { inventedFigures, inventedRecord } from './inventedRecord';

const fold = inventedRecord().folds[0]!;
const early = inventedRecord({
  folds: [{ ...fold, time: 1 }],
  figures: { ...inventedFigures, filledTime: 1.5 },
});

describe('the axis of folds', () => {
  test('ends a little after the last fold or full die, by time, inclination and share alike', () => {
    const byTime = foldSpan([early], 'time');
    expect(byTime.from).toBe(0);
    expect(byTime.to).toBeGreaterThan(1.5);
    expect(byTime.to).toBeLessThan(1.8);
    const byAngle = foldSpan([early], 'inclination');
    expect(byAngle.from).toBe(stepRange([early], 'inclination').from);
    expect(byAngle.to).toBeLessThan(stepValue(early, 'inclination', 1.5));
    expect(byAngle.to).toBeGreaterThan(fromDegrees(0));
  });

  test('holds every fold of every pour', () => {
    const late = inventedRecord({
      folds: [{ ...fold, time: 4 }],
      figures: { ...inventedFigures, filledTime: 3 },
    });
    const { to } = foldSpan([early, late], 'time');
    expect(to).toBeGreaterThan(4);
    expect(to).toBeLessThan(5);
  });

  test('is the whole of a pour that does not fill its die', () => {
    const short = inventedRecord({ figures: { ...inventedFigures, filledTime: null } });
    expect(foldSpan([early, short], 'time')).toEqual(stepRange([early, short], 'time'));
  });
});

test('metal that stands at the end from the start draws no place of a front', () => {
  const record = inventedRecord();
  const front = record.series.front.map(() => 0.2);
  expect(frontPlaceCurve({ ...record, series: { ...record.series, front } }, 'inclination')).toEqual({
    x: [],
    y: [],
  });
  expect(frontPlaceCurve(record, 'inclination').x.length).toBeGreaterThan(2);
});
