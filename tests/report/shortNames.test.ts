import { expect, test } from 'vitest';
import { shortNames } from '$src/report/shortNames';

test.each([
  [
    ['Quick', 'Slow'],
    ['Quick', 'Slow'],
  ],
  [
    ['Uphill pour 5 s', 'Uphill pour 6 s', 'Uphill pour 12.5 s'],
    ['5', '6', '12.5'],
  ],
  [
    ['Quick and steady from +30°', 'Quick and staged from +30°'],
    ['steady', 'staged'],
  ],
  // Of each name a word is left.
  [
    ['Pour', 'Pour 2', 'Pour 3'],
    ['Pour', 'Pour 2', 'Pour 3'],
  ],
  [
    ['Slowly over the high sill', 'Quickly over a low sill'],
    ['Slowly over t…', 'Quickly over…'],
  ],
])('%j are told apart as %j', (names, short) => {
  expect(shortNames(names)).toEqual(short);
});

test('names that differ only where they are cut have none', () => {
  expect(shortNames(['Transverselongname one', 'Transverselongname two', 'x'])).toBeNull();
});
