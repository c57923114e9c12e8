import { expect, test } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { skimBarCorners } from '$src/report/drawing/skimBar';

const outline = [
  { x: 0, y: 0 },
  { x: 0.1, y: 0 },
  { x: 0.1, y: 0.05 },
  { x: 0, y: 0.05 },
];

/** Of the lab frame: across and elevation [m]. */
function inLab(inclination: number, lowerEdge: number) {
  const level = 0.06;
  const corners = skimBarCorners({ outline, level, fromLip: -0.01 }, lowerEdge, inclination);
  const [sin, cos] = [Math.sin(inclination), Math.cos(inclination)];
  return corners.map(({ x, y }) => ({ across: x * cos - y * sin, elevation: x * sin + y * cos }));
}

test.each([0, 30, -20])('a skim bar hangs plumb, its lower edge where it was given, at %d°', (degrees) => {
  const [a, b, c, d] = inLab(fromDegrees(degrees), -0.005);
  // The surface lies 10 mm below the lip, so the lip is at 70 mm, and the edge 5 mm below that.
  expect(a!.elevation).toBeCloseTo(0.065, 12);
  expect(b!.elevation).toBeCloseTo(0.065, 12);
  expect(c!.across).toBeCloseTo(b!.across, 12);
  expect(d!.across).toBeCloseTo(a!.across, 12);
  expect(c!.elevation).toBeGreaterThan(b!.elevation);
});

test('a bar dipped deep reaches above the metal', () => {
  const [, lower, upper] = inLab(0, -0.04);
  expect(lower!.elevation).toBeCloseTo(0.03, 12);
  expect(upper!.elevation).toBeGreaterThan(0.06);
});
