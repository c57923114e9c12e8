import { describe, expect, it } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { arcPoints, bulgePoints, cubicPoints } from '$src/fromDrawing/curves';

describe('curves', () => {
  it('end where they end, and an arc of half a turn is twice its radius wide', () => {
    const cubic = cubicPoints({ x: 0, y: 0 }, { x: 0, y: 1 }, { x: 2, y: 1 }, { x: 2, y: 0 });
    expect(cubic.at(-1)).toEqual({ x: 2, y: 0 });
    expect(cubic[7]).toEqual({ x: 1, y: 0.75 });
    const half = arcPoints({ centre: { x: 1, y: 1 }, radius: 2, start: 0, sweep: Math.PI });
    expect(half[0]!.x - half.at(-1)!.x).toBeCloseTo(4, 12);
  });

  it('a bulge is the tangent of a quarter of the angle, positive to the right of the way', () => {
    const bulge = Math.tan(fromDegrees(90) / 4);
    const points = bulgePoints({ x: 0, y: 0 }, { x: 1, y: 1 }, bulge);
    for (const { x, y } of points) expect(Math.hypot(x, y - 1)).toBeCloseTo(1, 12);
    expect(bulgePoints({ x: 0, y: 0 }, { x: 1, y: 1 }, 0)).toEqual([{ x: 1, y: 1 }]);
  });
});
