import { describe, expect, it, test } from 'vitest';
import { chargeValue } from '$src/cells/chargeValue';
import { wholeTenthsIn } from '$src/cells/levelsThatStand';
import { fillLevels, volumeFromFillLevel } from '$src/core/level/fillLevel';
import { metalNamed } from '$src/core/metal/metals';
import { hingeArm, pitBehindSill } from '$src/core/section/shapes';
import { fromDegrees, fromMillimetres, METRIC } from '$src/core/units';
import { chargeAs } from '$src/ui/cells/chargeAs';

const MINUS = '\u2212';
const A356 = metalNamed('A356')!;
const START = fromDegrees(30);
const END = fromDegrees(-90);
const levelled = (fromLip: number, start = START) =>
  chargeValue(pitBehindSill(), A356, start, END, { by: 'fill level', fromLip }, null);

describe('levels that stand in a basin', () => {
  it.each([0, 10, 30, 45])('lie between floor and lowest rim at %s°', (inclination) => {
    const start = fromDegrees(inclination);
    for (const section of [hingeArm(), pitBehindSill()]) {
      const [lowest, highest] = fillLevels(section, start)!;
      expect(volumeFromFillLevel(section, start, lowest) ?? 0).toBeLessThan(1e-30);
      expect(volumeFromFillLevel(section, start, lowest + 1e-4)).toBeGreaterThan(0);
      expect(volumeFromFillLevel(section, start, highest)).toBeGreaterThan(0);
      expect(volumeFromFillLevel(section, start, highest + 1e-6)).toBeNull();
    }
  });

  it('are given in tenths of a millimetre that stand', () => {
    expect(wholeTenthsIn([fromMillimetres(-20), fromMillimetres(-3.04)])).toEqual([
      fromMillimetres(-19.9),
      fromMillimetres(-3.1),
    ]);
    expect(wholeTenthsIn([0.00001, 0.00002])).toBeNull();
  });

  it('are named where another was given, and both of them stand', () => {
    const refused = levelled(fromMillimetres(-1));
    if (!('issues' in refused)) throw new Error('1 mm below the lip stands.');
    const found = new RegExp(
      `^Give a level between ([${MINUS}0-9.]+) and ([${MINUS}0-9.]+) mm from the lip`,
    ).exec(refused.issues[0]!.remedy)!;
    const [low, high] = found.slice(1).map((text) => fromMillimetres(Number(text.replace(MINUS, '-'))));
    expect(volumeFromFillLevel(pitBehindSill(), START, low!)).toBeGreaterThan(0);
    expect(levelled(high!)).toHaveProperty('value');
    expect(levelled(high! + fromMillimetres(0.2))).toHaveProperty('issues');
  });
});

test('a charge that is told by its level comes to one that stands, where its own is none', () => {
  const stands = (charge: Parameters<typeof chargeAs>[1]) =>
    'value' in chargeValue(pitBehindSill(), A356, START, END, charge, null);
  const levels = wholeTenthsIn(fillLevels(pitBehindSill(), START)!);
  const told = chargeAs('fill level', { by: 'head', head: 0.05 }, null, METRIC, stands, levels);
  expect(stands(told)).toBe(true);
  expect(stands(chargeAs('fill level', { by: 'head', head: 0.05 }, null, METRIC, stands))).toBe(false);
});
