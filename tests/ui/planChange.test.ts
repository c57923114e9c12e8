import { expect, test } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { planChange } from '$src/ui/planChange';
import { inventedPlan as plan } from '../report/inventedRecord';

test('nothing changed, nothing said; the coarse mesh is no change of the user', () => {
  expect(planChange(plan, plan)).toBeNull();
  const coarse = { ...plan, computation: { ...plan.computation, meshCells: 100 } };
  expect(planChange(coarse, plan)).toBeNull();
});

test('one change is told with both values', () => {
  const more = { ...plan, volume: plan.volume * 1.5 };
  expect(planChange(plan, more)).toMatch(
    /^Charge changed from [\d.]+ kg \([\d.]+ mm (below|above) the lip\) to [\d.]+ kg\.$/,
  );
});

test('a change too small for the words is still told', () => {
  expect(planChange(plan, { ...plan, volume: plan.volume * 1.000001 })).toBe('Charge changed a little.');
});

test('several changes are named, a whole new pour is counted', () => {
  const tilt = { ...plan.tilt, start: plan.tilt.start - fromDegrees(1) };
  const two = { ...plan, tilt, volume: plan.volume * 2 };
  expect(planChange(plan, two)).toBe('Start angle and charge changed.');
  const pivot = { x: fromMillimetres(1), y: fromMillimetres(1) };
  const liquid = { ...plan.liquid, density: 6700, surfaceTension: 1.2 };
  const other = { ...two, liquid, section: { ...plan.section, pivot } };
  expect(planChange(plan, other)).toMatch(/^\d+ inputs changed\.$/);
});

test('what a longer die takes along is no change of its own: vents and widths past the place that gives way, and those before it', () => {
  const { section } = plan;
  const vents = [
    { place: 0.2, area: 2e-5, blocked: 0 },
    { place: 0.35, area: 2e-5, blocked: 0 },
  ];
  const end = section.floor.at(-1)!.x;
  const regions = [
    section.regions[0]!,
    { name: 'gate', end: 0.25, width: 0.02 },
    { name: 'web', end: 0.3, width: 0.01 },
    { name: 'arm', end, width: 0.03 },
  ];
  const before: PourPlan = { ...plan, section: { ...section, vents, regions } };
  const longer = (by: number, moved: (place: number) => number): PourPlan => {
    const line = (points: typeof section.floor) =>
      points.map((point) => (point.x === end ? { ...point, x: end + by } : point));
    return {
      ...before,
      section: {
        ...before.section,
        floor: line(section.floor),
        roof: line(section.roof),
        regions: regions.map((region) => ({
          ...region,
          end: region.end === end ? end + by : moved(region.end),
        })),
        vents: vents.map((vent) => ({ ...vent, place: moved(vent.place) })),
      },
    };
  };
  const told = /^Die, length × height changed from 200 × 30 mm to 220 × 30 mm\.$/;
  const past = (place: number, from: number): number => (place > from ? place + 0.02 : place);
  expect(
    planChange(
      before,
      longer(0.02, (place) => past(place, 0.31)),
    ),
  ).toMatch(told);
  // It gives way between two vents and two widths.
  expect(
    planChange(
      before,
      longer(0.02, (place) => past(place, 0.28)),
    ),
  ).toMatch(told);
  expect(
    planChange(
      before,
      longer(0.02, (place) => past(place, 0.16)),
    ),
  ).toMatch(told);
  // One that moved by another length has moved of itself.
  expect(
    planChange(
      before,
      longer(0.02, (place) => (place === 0.35 ? 0.36 : place)),
    ),
  ).toBe('Die, length × height and vents changed.');
});
