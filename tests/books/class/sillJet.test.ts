import { describe, expect, it } from 'vitest';
import { GRAVITY } from '$src/core/gravity';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees, toMillimetres } from '$src/core/units';
import { speedCall } from '$src/report/speedCall';
import { computed } from '../computed';
import { planOf } from '../planOf';
import { sillJet } from '../sources/class/sillJet';
import { answer, asksBeforeItShows, firstFlow, peak, recordOf } from './claims';

asksBeforeItShows(sillJet);

describe('a sill', () => {
  it('makes the highest of three the fastest', () => {
    expect(answer(sillJet, 'guess-order')?.key).toBe('high');
    expect(speedCall(recordOf(sillJet, 'high'))).toBe('over');
    expect(firstFlow(recordOf(sillJet, 'high'))).toBeLessThan(0);
  });

  it('makes the same jet on a fine mesh', () => {
    const fine = computed(planOf(sillJet, 'high', 400));
    expect(speedCall(fine)).toBe('over');
    expect(firstFlow(fine)).toBeLessThan(0);
  });

  it('is forgiven when it is low, since its metal still comes in uphill', () => {
    for (const id of ['flush', 'low']) {
      expect(firstFlow(recordOf(sillJet, id))).toBeGreaterThan(0);
      expect(speedCall(recordOf(sillJet, id))).toBe('under');
    }
  });

  it('jets no faster than the fall of the note, and over the limit', () => {
    const level = recordOf(sillJet, 'level');
    expect(Math.abs(firstFlow(level) + 10)).toBeLessThan(1);
    const fall = 0.2 * Math.sin(fromDegrees(10));
    expect(toMillimetres(fall)).toBeCloseTo(35, 0);
    expect(Math.sqrt(2 * GRAVITY * fall)).toBeCloseTo(0.83, 2);
    expect(peak(level)).toBeLessThan(Math.sqrt(2 * GRAVITY * fall));
    expect(answer(sillJet, 'guess-level')?.key).toBe('over');
    expect(toMillimetres(0.2 * Math.sin(fromDegrees(3.5)))).toBeCloseTo(12, 0);
  });

  it('is no gentler for a slower machine', () => {
    const cells = sillJet.cells.map((cell) =>
      cell.id === 'level-tilt' && cell.kind === 'tilt' && cell.tilt.kind === 'steady'
        ? { ...cell, tilt: { ...cell.tilt, rate: fromDegrees(5) } }
        : cell,
    );
    const slower = recordOf({ ...sillJet, title: 'slower', cells }, 'level');
    expect(firstFlow(slower)).toBeLessThan(0);
    expect(speedCall(slower)).toBe('over');
  });
});

describe('the cure that the note tells', () => {
  const plan = planOf(sillJet, 'high', 100);
  const high = recordOf(sillJet, 'high');

  it('is no higher start: the same metal comes over the sill no earlier', () => {
    for (const start of [30, 45]) {
      const higher = computed({ ...plan, tilt: { ...plan.tilt, start: fromDegrees(start) } as Tilt });
      expect(Math.abs(firstFlow(higher) - firstFlow(high))).toBeLessThan(1.5);
      expect(speedCall(higher)).toBe('over');
    }
  });

  it('is more metal, which comes over it earlier', () => {
    const fuller = computed({ ...plan, volume: 0.9 / plan.liquid.density });
    expect(firstFlow(fuller)).toBeGreaterThan(firstFlow(high) + 3);
    expect(peak(fuller)).toBeLessThan(0.93 * peak(high));
  });
});

describe('the answers in docs/teaching.md', () => {
  it.each([['high', 0.66]])('the front of %s reaches about %f m/s', (id, speed) => {
    expect(Math.abs(peak(recordOf(sillJet, id)) - speed)).toBeLessThan(0.02);
  });

  it('the front of the pour “high” runs faster at the end than at the mouth', () => {
    const { speed } = recordOf(sillJet, 'high').frontSpeeds;
    expect(speed[speed.length - 1]!).toBeGreaterThan(2 * speed[0]!);
  });
});
