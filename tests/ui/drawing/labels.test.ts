import { describe, expect, test } from 'vitest';
import { bodyMeetsBox, type LabelWish, lineMeetsBox, placeLabels } from '$src/ui/drawing/labels';

const picture = { width: 700, height: 500 };
const slab = [
  { x: 150, y: 200 },
  { x: 550, y: 200 },
  { x: 550, y: 300 },
  { x: 150, y: 300 },
];

function wishes(count: number): LabelWish[] {
  return Array.from({ length: count }, (_, i) => ({
    key: `part ${i}`,
    lines: [`part number ${i}`],
    anchor: { x: 170 + i * 36, y: i % 2 ? 205 : 295 },
    towards: { x: 0, y: i % 2 ? -1 : 1 },
  }));
}

describe('labels', () => {
  test('lie on nothing: not on each other, not on steel, not outside the picture', () => {
    const placed = placeLabels(wishes(10), [slab], [], picture);
    expect(placed).toHaveLength(10);
    placed.forEach((a, i) => {
      expect(bodyMeetsBox(slab, a.box)).toBe(false);
      expect(a.box.left).toBeGreaterThanOrEqual(0);
      expect(a.box.right).toBeLessThanOrEqual(picture.width);
      for (const b of placed.slice(i + 1)) {
        const apart =
          a.box.right <= b.box.left ||
          b.box.right <= a.box.left ||
          a.box.bottom <= b.box.top ||
          b.box.bottom <= a.box.top;
        expect(apart).toBe(true);
        expect(lineMeetsBox(a.wish.anchor, a.leaderEnd, b.box)).toBe(false);
      }
    });
  });

  test('a label with no free place is left out', () => {
    const everywhere = { left: 0, top: 0, right: 700, bottom: 500 };
    expect(placeLabels(wishes(2), [], [everywhere], picture)).toHaveLength(0);
  });

  test('a place taken before is kept while it is still free', () => {
    const one = wishes(1);
    const before = new Map([['part 0', '40/38']]);
    expect(placeLabels(one, [slab], [], picture, before)[0]!.choice).toBe('40/38');
    expect(placeLabels(one, [slab], [], picture)[0]!.choice).not.toBe('40/38');
  });
});
