import type { PourPlan } from '$src/core/pour/plan';
import type { Section } from '$src/core/section/section';
import { fromMillimetres } from '$src/core/units';

/** A pour from a long shallow basin: 10 mm to the lip, less than its skin lets the metal stand. */
export function inLongBasin(plan: PourPlan): PourPlan {
  const length = fromMillimetres(350);
  const depth = fromMillimetres(10);
  const section: Section = {
    ...plan.section,
    floor: [
      { x: 0, y: -depth },
      { x: length, y: -depth },
      { x: length, y: 0 },
      { x: length + 0.2, y: 0 },
    ],
    roof: [
      { x: 0, y: 0.08 },
      { x: length - 0.07, y: 0.08 },
      { x: length - 0.07, y: 0.04 },
      { x: length + 0.2, y: 0.03 },
    ],
    mouth: length,
    pivot: { x: length, y: 0 },
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [{ ...plan.section.regions[0]!, end: length + 0.2, width: 0.08 }],
  };
  return { ...plan, section, volume: 0.08 * length * fromMillimetres(10.4) };
}

/** A bar of 220 × 25 × 50 mm, started level behind a basin 160 mm long with a pit, its metal above the lip, where its skin holds it. */
export function barOverTheLip(plan: PourPlan, pit: number, over: number): PourPlan {
  const [basin, die, high, wide, wall] = [160, 220, 25, 50, 120].map(fromMillimetres) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const opening = basin - fromMillimetres(40);
  const section: Section = {
    ...plan.section,
    floor: [
      { x: 0, y: -pit },
      { x: basin, y: -pit },
      { x: basin, y: 0 },
      { x: basin + die, y: 0 },
    ],
    roof: [
      { x: 0, y: wall - pit },
      { x: opening, y: wall - pit },
      { x: opening, y: high },
      { x: basin + die, y: high },
    ],
    mouth: basin,
    pivot: { x: basin, y: 0 },
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [{ ...plan.section.regions[0]!, end: basin + die, width: wide }],
    vents: [],
  };
  return { ...plan, section, tilt: { ...plan.tilt, start: 0 }, volume: wide * basin * (pit + over) };
}
