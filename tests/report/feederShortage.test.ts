import { expect, test } from 'vitest';
import type { Feeding } from '$src/core/heat/afterFill';
import { fromCubicCentimetres } from '$src/core/units';
import { lackWords } from '$src/report/feederShortage';

const feeding = (timeRatio: number, supply: number, demand: number): Feeding => ({
  timeRatio,
  supply: fromCubicCentimetres(supply),
  demand: fromCubicCentimetres(demand),
  ownDemand: fromCubicCentimetres(15),
  enough: { time: timeRatio >= 1.2, metal: supply >= demand },
});

test('what the feeder lacks comes before what it has enough of', () => {
  expect(lackWords(feeding(1.24, 38, 40.6))).toBe(
    "It lacks 3 cm³ of metal: it can give 38 cm³, die and feeder draw 41 cm³ as they cool and freeze, 15 cm³ of it the feeder itself; it lasts long enough, 1.2 × the die's time, 1.2 wanted",
  );
  expect(lackWords(feeding(1, 45, 40))).toMatch(
    /^It freezes too soon: it lasts 1\.0 × the die's time, 1\.2 wanted; it has metal enough: it can give 45 cm³/,
  );
  expect(lackWords(feeding(1, 38, 40))).toMatch(
    /^It lacks 2 cm³ of metal: .*; and it freezes too soon: it lasts 1\.0 × the die's time, 1\.2 wanted$/,
  );
});

test('what is lacking is seen in its figures', () => {
  expect(lackWords(feeding(1.17, 45, 40))).toContain("1.17 × the die's time, 1.20 wanted");
  expect(lackWords(feeding(1.3, 39.8, 40.2))).toMatch(/^It lacks 0\.4 cm³ of metal: it can give 39\.8 cm³/);
  expect(lackWords(feeding(1.3, 39.99, 40.01))).toMatch(/^It lacks under 0\.1 cm³ of metal/);
});
