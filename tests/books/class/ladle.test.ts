import { describe, expect, it } from 'vitest';
import { speedCall } from '$src/report/speedCall';
import { ladle } from '../sources/class/ladle';
import { answer, asksBeforeItShows, firstFlow, peak, recordOf } from './claims';

asksBeforeItShows(ladle);

describe('a short ladle', () => {
  const fills = ['fill-1', 'fill-12', 'fill-18'].map((id) => recordOf(ladle, id));

  it('comes later and runs faster the lower the fill', () => {
    for (let index = 1; index < fills.length; index++) {
      expect(firstFlow(fills[index]!)).toBeLessThan(firstFlow(fills[index - 1]!));
      expect(peak(fills[index]!)).toBeGreaterThan(peak(fills[index - 1]!));
    }
  });

  it('is answered uphill, downhill, and the shortest', () => {
    expect(answer(ladle, 'guess-full')?.key).toBe('uphill');
    expect(answer(ladle, 'guess-short')?.key).toBe('downhill');
    expect(answer(ladle, 'guess-quickest')?.key).toBe('fill-18');
    expect(fills.map((record) => speedCall(record))).toEqual(['under', 'too close to call', 'over']);
  });

  it('fills the arm each time', () => {
    for (const fill of fills) expect(fill.outcome.kind).toBe('filled and quiet');
  });
});

describe('the answers in docs/teaching.md', () => {
  it.each([
    ['fill-1', 0.33],
    ['fill-18', 0.58],
  ])('the front of %s reaches about %f m/s', (id, speed) => {
    expect(Math.abs(peak(recordOf(ladle, id)) - speed)).toBeLessThan(0.02);
  });

  it.each([
    ['fill-1', 11],
    ['fill-18', -3],
  ])('metal of %s comes in near %i°', (id, degrees) => {
    expect(Math.abs(firstFlow(recordOf(ladle, id)) - degrees)).toBeLessThan(1);
  });
});
