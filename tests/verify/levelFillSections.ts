import fc from 'fast-check';
import type { Opening, Point, Section } from '$src/core/section/section';
import { fromMillimetres } from '$src/core/units';

type Pair = readonly [number, number];

/** A section 1 m wide into the page, so that volume per metre is area; all in millimetres. */
export function sectionOf(
  floor: readonly Pair[],
  roof: readonly Pair[],
  mouth: number,
  openings: readonly Opening[] = [],
): Section {
  const toPoint = ([x, y]: Pair): Point => ({ x: fromMillimetres(x), y: fromMillimetres(y) });
  return {
    floor: floor.map(toPoint),
    roof: roof.map(toPoint),
    openings,
    regions: [{ name: 'All', end: fromMillimetres(floor.at(-1)![0]), width: 1 }],
    mouth: fromMillimetres(mouth),
    cavities: 1,
    pivot: { x: 0, y: 0 },
    vents: [],
  };
}

export const openFirst: readonly Opening[] = [{ wall: 'roof', from: 0, to: 1 }];

/** Basin 70 long and 120 deep, channel 200 long and 30 high, flush floor (pours P3 and P4). */
export const deepBasin = sectionOf(
  [
    [0, 0],
    [270, 0],
  ],
  [
    [0, 120],
    [70, 120],
    [70, 30],
    [270, 30],
  ],
  70,
  openFirst,
);

/** Basin 120 long, floor 25 below the die, step at the mouth, channel 200 long and 30 high (pours P2 and P5). */
export const pitBasin = sectionOf(
  [
    [0, -25],
    [120, -25],
    [120, 0],
    [320, 0],
  ],
  [
    [0, 60],
    [120, 60],
    [120, 30],
    [320, 30],
  ],
  120,
  openFirst,
);

/** The flush basin of the worked pair: 155 long, roofed from 103, rim 95 high. */
export const goodBasin = sectionOf(
  [
    [0, 0],
    [355, 0],
  ],
  [
    [0, 95],
    [103, 95],
    [103, 30],
    [355, 30],
  ],
  155,
  openFirst,
);

/** Whole tenths of a millimetre, as a drawing has them. */
const tenths = (min: number, max: number) =>
  fc.integer({ min: 10 * min, max: 10 * max }).map((value) => value / 10);

/** One place of a random section: floor left and right of it, and roof left and right of it. */
const place = fc.record({
  run: tenths(5, 90),
  floor: tenths(-60, 60),
  step: fc.option(tenths(-40, 40), { nil: 0, freq: 2 }),
  gap: tenths(4, 80),
  ledge: fc.option(tenths(-50, 50), { nil: 0, freq: 2 }),
});

/** Random sections: ramps, steps, sills, pits, tapers, roof ledges, with the first stretch open or not. */
export const anySection: fc.Arbitrary<Section> = fc
  .record({
    places: fc.array(place, { minLength: 3, maxLength: 8 }),
    mouthAt: fc.nat(),
    isOpen: fc.boolean(),
  })
  .map(({ places, mouthAt, isOpen }) => {
    let x = 0;
    const floor: Pair[] = [];
    const roof: Pair[] = [];
    places.forEach((here, i) => {
      const inner = i > 0 && i < places.length - 1;
      const step = inner ? here.step : 0;
      const ledge = inner ? here.ledge : 0;
      const sill = Math.max(here.floor, here.floor + step);
      const top = sill + here.gap + Math.max(0, -ledge);
      floor.push([x, here.floor], ...(step === 0 ? [] : [[x, here.floor + step] as Pair]));
      roof.push([x, top], ...(ledge === 0 ? [] : [[x, top + ledge] as Pair]));
      x += here.run;
    });
    const marks = floor.map(([at]) => at).filter((at) => at > 0 && at < floor.at(-1)![0]);
    return sectionOf(floor, roof, marks[mouthAt % marks.length]!, isOpen ? openFirst : []);
  });
