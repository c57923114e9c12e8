import { expect, test } from 'vitest';
import type { Feeding } from '$src/core/heat/afterFill';
import type { PourPlan } from '$src/core/pour/plan';
import { cavityVolume } from '$src/core/section/cavity';
import { hingeArm } from '$src/core/section/shapes';
import { fromCubicCentimetres, fromDegrees } from '$src/core/units';
import { ladleMoreText } from '$src/report/ladleMore';
import { inventedPlan } from './inventedRecord';

const section = hingeArm();
const plan: PourPlan = {
  ...inventedPlan,
  section,
  volume: cavityVolume(section) * 0.85,
  tilt: {
    kind: 'steady',
    start: fromDegrees(30),
    end: fromDegrees(-90),
    rate: fromDegrees(10),
    smoothing: 0.3,
    limits: inventedPlan.tilt.limits,
  },
};

/** A feeder that lacks so much [cm³], of which a share of what is added makes up. */
const feederLacking =
  (lacking: number, share: number) =>
  (left: number): Feeding => {
    const short = fromCubicCentimetres(lacking) - share * (left - plan.volume);
    const enough = { time: true, metal: short <= 0 };
    return { timeRatio: 2, demand: 1e-4 + Math.max(0, short), ownDemand: 1e-5, supply: 1e-4, enough };
  };

const said = (lacking: number, share: number): string =>
  ladleMoreText(plan, plan.volume, feederLacking(lacking, share));

test('where it takes many times what is lacking, it is told how little of it feeds', () => {
  const words = said(3, 0.1);
  expect(words).toMatch(/^Ladle 31 cm³ more \(0\.08 kg\), skull not counted: /);
  expect(words).toContain(
    'of what is added only about 10 % feeds, for the feeder gives a small part of itself and shrinks too',
  );
  expect(said(6, 0.25)).toContain('only about 24 % feeds');
});

test('where it takes little more than is lacking, that is said in passing', () => {
  expect(said(5, 0.8)).toMatch(/^Ladle 7 cm³ more .*, for what is added shrinks too\.$/);
});
