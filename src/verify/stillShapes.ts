import type { Region, Section } from '$src/core/section/section';

function section(
  floor: readonly (readonly [number, number])[],
  roof: readonly (readonly [number, number])[],
  mouth: number,
  regions: readonly Region[] = [{ name: 'all', end: floor.at(-1)![0], width: 1 }],
): Section {
  const points = (line: readonly (readonly [number, number])[]) => line.map(([x, y]) => ({ x, y }));
  return {
    floor: points(floor),
    roof: points(roof),
    openings: [],
    regions,
    mouth,
    cavities: 1,
    pivot: { x: 0, y: 0 },
    vents: [],
  };
}

/** Ramps up and down under a roof that comes down. */
const RAMPS = {
  floor: [
    [0, 0],
    [0.08, 0],
    [0.13, 0.03],
    [0.2, 0.03],
    [0.24, -0.01],
    [0.34, 0],
  ],
  roof: [
    [0, 0.1],
    [0.1, 0.09],
    [0.2, 0.06],
    [0.34, 0.02],
  ],
} satisfies Record<string, [number, number][]>;

/** Shapes with everything that disturbs rest: roof steps, floor steps, pits, ramps, tapers in height and in width. */
export const SHAPES: Readonly<Record<string, Section>> = {
  'flush floor under a roof step': section(
    [
      [0, 0],
      [0.27, 0],
    ],
    [
      [0, 0.12],
      [0.07, 0.12],
      [0.07, 0.03],
      [0.27, 0.03],
    ],
    0.07,
  ),
  'pit behind a lip': section(
    [
      [0, -0.025],
      [0.12, -0.025],
      [0.12, 0],
      [0.32, 0],
    ],
    [
      [0, 0.06],
      [0.12, 0.06],
      [0.12, 0.03],
      [0.32, 0.03],
    ],
    0.12,
  ),
  'ramps and a taper': section(RAMPS.floor, RAMPS.roof, 0.1),
  'steps up and down': section(
    [
      [0, 0],
      [0.05, 0],
      [0.05, 0.02],
      [0.1, 0.02],
      [0.1, 0.005],
      [0.2, 0.005],
      [0.2, 0.015],
      [0.3, 0.015],
    ],
    [
      [0, 0.08],
      [0.15, 0.08],
      [0.15, 0.03],
      [0.3, 0.04],
    ],
    0.1,
  ),
  'widths that taper and step': section(RAMPS.floor, RAMPS.roof, 0.1, [
    { name: 'basin', end: 0.1, width: 0.12, widthAtEnd: 0.03 },
    { name: 'fan gate', end: 0.16, width: 0.03, widthAtEnd: 0.2 },
    { name: 'step', end: 0.22, width: 0.08 },
    { name: 'tail', end: 0.34, width: 0.1, widthAtEnd: 0.004 },
  ]),
};
