import { describe, expect, it } from 'vitest';
import { DARK_RAMP, deepestInDie, depthPixels, LIGHT_RAMP, rampColour } from '$src/report/depthMap';
import { inventedRecord } from './inventedRecord';

const record = inventedRecord();
const lightness = ([red, green, blue]: readonly number[]): number =>
  0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;

describe('depth map', () => {
  it.each([
    ['light', LIGHT_RAMP, -1],
    ['dark', DARK_RAMP, 1],
  ] as const)('%s ramp goes one way in lightness', (_, ramp, way) => {
    const steps = Array.from({ length: 65 }, (_, index) => lightness(rampColour(ramp, index / 64)));
    for (let index = 1; index < steps.length; index++)
      expect(way * (steps[index]! - steps[index - 1]!)).toBeGreaterThan(0);
  });

  it('is clear where the die is dry and coloured behind the front', () => {
    const { pixels, columns } = depthPixels(
      record,
      { columns: 100, rows: 90 },
      { from: 0, to: 9 },
      LIGHT_RAMP,
    );
    const alpha = (column: number, row: number) => pixels[(row * columns + column) * 4 + 3];
    // At 2 s (row 19 or 20) the front is at 100 mm: column 50.
    expect(alpha(20, 20)).toBe(255);
    expect(alpha(80, 20)).toBe(0);
    expect(alpha(99, 60)).toBe(255);
    expect(alpha(10, 0)).toBe(0);
  });

  it('uses the whole ramp', () => {
    expect(deepestInDie(record)).toBeCloseTo(0.03, 6);
    const { pixels } = depthPixels(record, { columns: 60, rows: 60 }, { from: 0, to: 9 }, LIGHT_RAMP);
    const colours = new Set<string>();
    for (let at = 0; at < pixels.length; at += 4)
      if (pixels[at + 3]) colours.add(`${pixels[at]} ${pixels[at + 1]}`);
    expect(colours.has('74 37')).toBe(true);
    expect(colours.size).toBeGreaterThan(20);
  });
});
