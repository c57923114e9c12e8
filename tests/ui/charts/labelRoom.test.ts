import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dense, hits, hitsIn, stripsOf } from '$src/ui/charts/labelRoom';

const place = fc.double({ min: -50, max: 600, noNaN: true });
const curves = fc.array(fc.tuple(place, place), { maxLength: 40 });

test('a box meets as many points of a curve in strips as of the curve itself', () => {
  fc.assert(
    fc.property(curves, place, place, place, place, (points, x0, x1, y0, y1) => {
      const box = {
        left: Math.min(x0, x1),
        right: Math.max(x0, x1),
        top: Math.min(y0, y1),
        bottom: Math.max(y0, y1),
      };
      expect(hitsIn(box, stripsOf(points))).toBe(hits(box, dense(points)));
    }),
    { seed: 20269 },
  );
});
