import { expect, test } from 'vitest';
import { watchContraction } from '$src/core/watch/contraction';
import { returningBore } from './profileSample';

const folded = (rise: number): number => {
  const watch = watchContraction(0.2);
  for (const look of returningBore(rise)) watch.look(look);
  return watch.folded();
};

test('a bore that fills the opening folds the skin ahead of it in, however sharp it is', () => {
  // The bore passes 120 mm in 0.6 s: twelve bins of 10 mm, each closing at 0.9 m/s for 50 ms.
  const expected = 0.9 * 0.6;
  for (const rise of [0.5e-3, 2e-3, 5e-3, 9e-3]) expect(folded(rise) / expected).toBeCloseTo(1, 1);
});
