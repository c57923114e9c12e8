import { describe, expect, it } from 'vitest';
import { GRAVITY } from '$src/core/gravity';
import { criticalSpeedOf } from '$src/core/metal/criticalSpeed';
import { metalNamed } from '$src/core/metal/metals';
import { speedCall } from '$src/report/speedCall';
import { oxideFilm } from '../sources/class/oxideFilm';
import { answer, asksBeforeItShows, peak, recordOf } from './claims';

asksBeforeItShows(oxideFilm);

describe('a skin on the metal', () => {
  const { surfaceTension, density } = metalNamed('A356')!;

  it('takes the sum from the metal of the book, step by step as in the note', () => {
    expect([surfaceTension.value, density.value]).toEqual([0.865, 2400]);
    const steps = [0.865 * GRAVITY, (0.865 * GRAVITY) / 2400];
    expect(steps[0]).toBeCloseTo(8.49, 1);
    expect(steps[1]).toBeCloseTo(0.00354, 5);
    expect(Math.sqrt(steps[1]!)).toBeCloseTo(0.0595, 4);
    expect(Math.sqrt(Math.sqrt(steps[1]!))).toBeCloseTo(0.244, 3);
    expect(criticalSpeedOf(0.865, 2400)).toBeCloseTo(0.49, 2);
  });

  it('gives the limit as a height too, and as far off for a clean surface', () => {
    const puddle = 2 * Math.sqrt(0.865 / (2400 * GRAVITY));
    expect(puddle).toBeCloseTo(0.0121, 4);
    expect(Math.sqrt(2 * GRAVITY * puddle)).toBeCloseTo(criticalSpeedOf(0.865, 2400), 12);
    expect(criticalSpeedOf(1.1, 2400)).toBeCloseTo(0.52, 2);
    expect(criticalSpeedOf(1.1, 2400) / criticalSpeedOf(0.865, 2400)).toBeCloseTo(1.06, 2);
  });

  it('keeps the gentle pour under and the falling one over', () => {
    expect(speedCall(recordOf(oxideFilm, 'gentle'))).toBe('under');
    expect(answer(oxideFilm, 'guess-falling')?.key).toBe('over');
  });

  it('folds in more ways than by speed, in the falling pour', () => {
    const kinds = new Set(recordOf(oxideFilm, 'falling').folds.map(({ kind }) => kind));
    expect(kinds.has('front over critical')).toBe(true);
    expect(kinds.size).toBeGreaterThan(2);
    expect(recordOf(oxideFilm, 'gentle').folds.length).toBeGreaterThan(0);
  });
});

describe('the answers in docs/teaching.md', () => {
  it.each([
    ['gentle', 0.35],
    ['falling', 0.73],
  ])('the front of %s reaches about %f m/s', (id, speed) => {
    expect(Math.abs(peak(recordOf(oxideFilm, id)) - speed)).toBeLessThan(0.02);
  });

  it('the front of the pour “gentle” runs faster at the end than at the mouth', () => {
    const { speed } = recordOf(oxideFilm, 'gentle').frontSpeeds;
    expect(speed[speed.length - 1]!).toBeGreaterThan(2 * speed[0]!);
  });
});
