import { describe, expect, it } from 'vitest';
import type { PourRecord } from '$src/core/pour/record';
import { fromDegrees, toMillimetres } from '$src/core/units';
import { pastLevel } from '../sources/class/pastLevel';
import { answer, asksBeforeItShows, peak, recordOf } from './claims';

asksBeforeItShows(pastLevel);

describe('slow past level', () => {
  const [even, slow, quick] = ['even', 'slow-first', 'quick-first'].map((id) => recordOf(pastLevel, id)) as [
    PourRecord,
    PourRecord,
    PourRecord,
  ];

  it('spends the same time three ways', () => {
    const upright = (record: PourRecord) => {
      const index = record.series.inclination.findIndex((angle) => angle <= fromDegrees(-89.9));
      return record.series.time[index]!;
    };
    for (const record of [even, slow, quick]) expect(Math.abs(upright(record) - 7.5)).toBeLessThan(0.15);
  });

  it('has its fastest front where the quick part comes first, and its slowest where it comes last', () => {
    expect(answer(pastLevel, 'guess-quickest')?.key).toBe('quick-first');
    expect(peak(slow)).toBeLessThan(peak(even));
  });

  it('has every front home by 10° past level', () => {
    for (const record of [even, slow, quick]) {
      const index = record.series.inclination.findIndex((angle) => angle <= fromDegrees(-10));
      expect(toMillimetres(record.series.front[index]!)).toBeGreaterThan(199);
    }
  });

  it('pays for slowness with warmth', () => {
    const margin = ({ figures }: PourRecord) => figures.lap!.margin;
    expect(Math.abs(margin(slow) - 3)).toBeLessThan(0.4);
    for (const other of [even, quick]) expect(Math.abs(margin(other) - 4.25)).toBeLessThan(0.4);
  });
});

describe('the answers in docs/teaching.md', () => {
  it.each([
    ['even', 0.38],
    ['slow-first', 0.23],
    ['quick-first', 0.54],
  ])('the front of %s reaches about %f m/s', (id, speed) => {
    expect(Math.abs(peak(recordOf(pastLevel, id)) - speed)).toBeLessThan(0.02);
  });

  it('the front of the pour “even” runs faster at the end than at the mouth', () => {
    const { speed } = recordOf(pastLevel, 'even').frontSpeeds;
    expect(speed[speed.length - 1]!).toBeGreaterThan(2 * speed[0]!);
  });
});
