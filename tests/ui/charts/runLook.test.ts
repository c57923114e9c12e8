import { expect, test } from 'vitest';
import { runLook } from '$src/ui/charts/runLook';

/** As many as a comparison draws. */
const DRAWN = 8;

test('every pour that a comparison draws looks like no other', () => {
  expect(new Set(Array.from({ length: DRAWN }, (_, place) => runLook(place))).size).toBe(DRAWN);
});
