import { describe, expect, it } from 'vitest';
import { fromCubicCentimetres } from '$src/core/units';
import { spilledReason } from '$src/report/spilledReason';
import { spillStart } from '$src/report/spillStart';
import { angleText, secondsText } from '$src/report/wording';
import { inventedRecord } from './inventedRecord';

describe('when metal begins to leave over a rim', () => {
  const plain = inventedRecord();
  const { time, inclination } = plain.series;
  const at = Math.floor(time.length / 2);
  const spilled = Float64Array.from(time, (_, i) => (i < at ? 0 : fromCubicCentimetres(3)));
  const record = inventedRecord({
    series: { ...plain.series, spilled },
    figures: { ...plain.figures, spilled: spilled.at(-1)! },
  });

  it('is the first look that shows it, with the body as it lay then', () =>
    expect(spillStart(record)).toEqual({ time: time[at], inclination: inclination[at] }));

  it('is nothing where none does', () => {
    const dry = { series: { ...plain.series, spilled: new Float64Array(time.length) } };
    expect(spillStart(dry)).toBeNull();
  });

  it('is told with the amount', () =>
    expect(spilledReason(record)!.line).toContain(
      `3.0 cm³ left over a rim, from ${secondsText(time[at]!)} on, at ${angleText(inclination[at]!)}.`,
    ));
});
