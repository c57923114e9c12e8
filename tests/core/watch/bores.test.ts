import { expect, test } from 'vitest';
import { watchBores } from '$src/core/watch/bores';
import type { Sample } from '$src/core/watch/sample';
import { lookAt, returningBore } from './profileSample';

function seen(looks: readonly Sample[]) {
  const watch = watchBores(0.49);
  for (const look of looks) watch.look(look);
  return watch.folds();
}

test.each([1e-3, 4e-3, 8e-3])(
  'a return wave whose rise is spread over %f m is one wave and no other',
  (rise) => {
    const folds = seen(returningBore(rise));
    expect(folds.map(({ kind }) => kind)).toEqual(['return wave']);
    expect(folds[0]!.severity.value).toBeCloseTo(0.9, 6);
  },
);

/** A breaking bore that stands at a place, and slower, deeper metal past it. */
const bore = (place: number) => (x: number) =>
  x < place ? { depth: 0.016, speed: 0.8 } : { depth: 0.008, speed: 0.1 };

test('a bore that stays is told; jumps here and there, none for long, are not', () => {
  const times = Array.from({ length: 60 }, (_, k) => (k + 1) * 2e-3);
  const stays = times.map((time) => lookAt(time, bore(0.0975)));
  const flickers = times.map((time, k) => lookAt(time, bore([0.0475, 0.0975, 0.1475][k % 3]!)));
  expect(seen(stays).map(({ kind, place }) => [kind, Math.abs(place - 0.0975) < 5e-3])).toEqual([
    ['breaking bore', true],
  ]);
  expect(seen(flickers)).toEqual([]);
});

test.each([
  [0.29, false],
  [0.7, true],
])('closing by %f m/s: clear of 0.25 is %s', (closing, isClear) => {
  const times = Array.from({ length: 60 }, (_, k) => (k + 1) * 2e-3);
  const standing = (x: number) =>
    x < 0.0975 ? { depth: 0.008, speed: 0.5 + closing } : { depth: 0.0028, speed: 0.5 };
  const folds = seen(times.map((time) => lookAt(time, standing)));
  expect(folds.map((fold) => fold.isClear)).toEqual([isClear]);
});

test('one that misses looks of its window is borderline', () => {
  const times = Array.from({ length: 60 }, (_, k) => (k + 1) * 2e-3);
  const level = () => ({ depth: 0.016, speed: 0.8 });
  const folds = seen(times.map((time, k) => lookAt(time, k % 10 === 0 ? level : bore(0.0975))));
  expect(folds.map(({ kind, isClear }) => [kind, isClear])).toEqual([['breaking bore', false]]);
});
