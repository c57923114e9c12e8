import { describe, expect, it } from 'vitest';
import { volumeFromFillLevel } from '$src/core/level/fillLevel';
import { fromDegrees } from '$src/core/units';
import { speedCall } from '$src/report/speedCall';
import { computed } from '../computed';
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

  it('is not forgiven by a higher start of the same weight; the same level there is another charge', () => {
    const { plan } = fills[1]!;
    const higher = { ...plan, tilt: { ...plan.tilt, start: fromDegrees(30) } };
    const level = volumeFromFillLevel(plan.section, higher.tilt.start, -0.012)!;
    const kilos = (volume: number): number => volume * plan.liquid.density;
    expect(kilos(plan.volume)).toBeCloseTo(0.77, 1);
    expect(kilos(level)).toBeCloseTo(1.2, 1);
    const [short, again] = [fills[1]!, computed(higher)];
    expect(Math.abs(firstFlow(again) - firstFlow(short))).toBeLessThan(1.5);
    expect(Math.abs(again.figures.foldScore / short.figures.foldScore - 1)).toBeLessThan(0.15);
    expect(peak(computed({ ...higher, volume: level }))).toBeLessThan(peak(fills[1]!) - 0.05);
  });

  it('fills the arm each time', () => {
    for (const fill of fills) expect(fill.outcome.kind).toBe('filled and quiet');
  });
});

describe('the answers in docs/teaching.md', () => {
  it.each([
    ['fill-1', 0.39],
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
