import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkSection } from '$src/core/section/checkSection';
import type { Point, Section } from '$src/core/section/section';
import { flushBasin, hingeArm, pitBehindSill, taperedLever, thinWall } from '$src/core/section/shapes';
import { anySection } from '../../verify/levelFillSections';

const sound = flushBasin();
const change = (part: Partial<Section>): Section => ({ ...sound, ...part });
const moved = (line: readonly Point[], index: number, to: Partial<Point>): Point[] =>
  line.map((point, i) => (i === index ? { ...point, ...to } : point));

test('starting shapes are sound', () => {
  for (const section of [flushBasin(), pitBehindSill(), hingeArm(), taperedLever(), thinWall()])
    expect(checkSection(section)).toEqual([]);
});

test('random sections of the right make are sound', () => {
  fc.assert(
    fc.property(anySection, (section) => {
      expect(checkSection(section)).toEqual([]);
    }),
    { seed: 5150, numRuns: 200 },
  );
});

test('a roof that dips under the floor is marked where it crosses, with the point that does it', () => {
  const roof = [...sound.roof.slice(0, 3), { x: 0.2705, y: -0.002 }, sound.roof[3]!];
  const issues = checkSection(change({ roof }));
  expect(issues).toHaveLength(1);
  expect(issues[0]).toEqual({
    path: 'roof.3.y',
    message: 'R4 puts the roof 2 mm under the floor between 260 and 275.8 mm.',
    remedy: 'Raise y of R4 to more than 0 mm, or take R4 out.',
    at: { x: 0.2705, y: -0.002 },
  });
});

test('a floor that rises over the roof names the floor point', () => {
  const floor = [sound.floor[0]!, { x: 0.25, y: 0.04 }, sound.floor[1]!];
  const [issue, ...more] = checkSection(change({ floor }));
  expect(more).toEqual([]);
  expect(issue).toMatchObject({
    path: 'floor.1.y',
    remedy: 'Lower y of F2 to less than 30 mm, or take F2 out.',
    at: { x: 0.25, y: 0.04 },
  });
  expect(issue!.message).toMatch(/^F2 puts the floor 10 mm over the roof between /);
});

test('a roof laid onto the floor is refused too', () => {
  const [issue] = checkSection(change({ roof: moved(sound.roof, 3, { y: 0 }) }));
  expect(issue).toMatchObject({ path: 'roof.3.y', message: 'R4 puts the roof onto the floor at 355 mm.' });
});

test('steps of floor and roof that shut the way between them are found', () => {
  const floor = [
    { x: 0, y: 0 },
    { x: 0.2, y: 0 },
    { x: 0.2, y: 0.035 },
    { x: 0.355, y: 0.035 },
  ];
  const roof = [
    { x: 0, y: 0.095 },
    { x: 0.1, y: 0.095 },
    { x: 0.1, y: 0.03 },
    { x: 0.2, y: 0.03 },
    { x: 0.2, y: 0.09 },
    { x: 0.355, y: 0.09 },
  ];
  const [issue, ...more] = checkSection(change({ floor, roof }));
  expect(more).toEqual([]);
  expect(issue).toMatchObject({ path: 'floor.2.y', at: { x: 0.2, y: 0.035 } });
  expect(issue!.message).toBe('The steps of floor and roof at 200 mm leave no way through.');
});

describe.each<[string, Section, string, RegExp]>([
  ['too few points', change({ floor: [{ x: 0, y: 0 }] }), 'floor', /one point only/],
  ['no points', change({ roof: [] }), 'roof', /no points/],
  [
    'not finite',
    change({ roof: moved(sound.roof, 1, { y: Number.NaN }) }),
    'roof.1.y',
    /y of R2 is not a number/,
  ],
  [
    'absurdly large',
    change({ floor: moved(sound.floor, 1, { x: 355 }) }),
    'floor.1.x',
    /x of F2 is 355000 mm/,
  ],
  ['turns back', change({ roof: moved(sound.roof, 2, { x: 0.09 }) }), 'roof.2.x', /R3 lies 13 mm behind R2/],
  [
    'runs over itself',
    change({
      roof: [
        sound.roof[0]!,
        { x: 0.103, y: 0.095 },
        { x: 0.103, y: 0.02 },
        { x: 0.103, y: 0.03 },
        sound.roof[3]!,
      ],
    }),
    'roof.2.y',
    /R3 makes the roof run out and back/,
  ],
  [
    'roof too short',
    change({ roof: moved(sound.roof, 3, { x: 0.35 }) }),
    'roof.3.x',
    /The roof ends 5 mm before the floor/,
  ],
  [
    'roof starts late',
    change({ roof: moved(sound.roof, 0, { x: 0.01 }) }),
    'roof.0.x',
    /The roof starts 10 mm after the floor/,
  ],
  ['mouth outside', change({ mouth: 0.4 }), 'mouth', /at 400 mm, is not inside/],
  ['mouth not a number', change({ mouth: Number.NaN }), 'mouth', /no place/],
  ['half a cavity', change({ cavities: 1.5 }), 'cavities', /1.5 is not a number of cavities/],
  ['no cavity', change({ cavities: 0 }), 'cavities', /0 is not a number of cavities/],
  ['no regions', change({ regions: [] }), 'regions', /no width/],
  [
    'zero width',
    change({ regions: [{ name: 'All', end: 0.355, width: 0 }] }),
    'regions.0.width',
    /Region All has no width/,
  ],
  [
    'negative width',
    change({ regions: [{ name: 'All', end: 0.355, width: -0.06 }] }),
    'regions.0.width',
    /negative width/,
  ],
  [
    'infinite width',
    change({ regions: [{ name: 'All', end: 0.355, width: Number.POSITIVE_INFINITY }] }),
    'regions.0.width',
    /not a number/,
  ],
  [
    'no width at the end of a taper',
    change({ regions: [{ name: 'Fan gate', end: 0.355, width: 0.06, widthAtEnd: 0 }] }),
    'regions.0.widthAtEnd',
    /Region Fan gate has no width at its end/,
  ],
  [
    'a taper wider than any die',
    change({ regions: [{ name: 'Fan gate', end: 0.355, width: 0.06, widthAtEnd: 9 }] }),
    'regions.0.widthAtEnd',
    /a width of 9000 mm at its end/,
  ],
  [
    'regions short',
    change({ regions: [{ name: 'All', end: 0.3, width: 0.06 }] }),
    'regions.0.end',
    /ends at 300 mm; the die ends at 355 mm/,
  ],
  [
    'regions out of order',
    change({
      regions: [
        { name: 'A', end: 0.2, width: 0.06 },
        { name: 'B', end: 0.1, width: 0.06 },
      ],
    }),
    'regions.1.end',
    /Region B ends at 100 mm, not after 200 mm/,
  ],
  [
    'opening without a rim',
    change({ openings: [{ wall: 'roof', from: 0, to: 9 }] }),
    'openings.0.to',
    /no point of the roof/,
  ],
  [
    'opening turned round',
    change({ openings: [{ wall: 'roof', from: 1, to: 0 }] }),
    'openings.0.to',
    /ends at R1, not after R2/,
  ],
  [
    'openings overlap',
    change({
      openings: [
        { wall: 'roof', from: 0, to: 2 },
        { wall: 'roof', from: 1, to: 3 },
      ],
    }),
    'openings.1',
    /Opening 2 lies over opening 1/,
  ],
  [
    'back wall open twice',
    change({ openings: [{ wall: 'back wall' }, { wall: 'back wall' }] }),
    'openings.1',
    /lies over/,
  ],
  ['pivot not a number', change({ pivot: { x: Number.NaN, y: 0 } }), 'pivot.x', /not a number/],
  [
    'vent outside',
    change({ vents: [{ place: 1, area: 1e-6, blocked: 0 }] }),
    'vents.0.place',
    /not over the section/,
  ],
  [
    'vent over-blocked',
    change({ vents: [{ place: 0.3, area: 1e-6, blocked: 2 }] }),
    'vents.0.blocked',
    /cannot be blocked/,
  ],
])('%s', (_, section, path, message) => {
  test('is refused with its place and a remedy', () => {
    const issues = checkSection(section);
    expect(issues.length).toBeGreaterThan(0);
    const issue = issues.find((candidate) => candidate.path === path);
    expect(issue?.message).toMatch(message);
    expect(issue!.remedy).toMatch(/^[A-Z].*\.$/);
    for (const { at } of issues) if (at) expect(Number.isNaN(at.y)).toBe(false);
  });
});

test('a section of any numbers at all is checked without an exception', () => {
  const number = fc.oneof(fc.double(), fc.double({ min: -1, max: 1 }));
  const point = fc.record({ x: number, y: number });
  const opening = fc.oneof(
    fc.record({ wall: fc.constant('roof' as const), from: fc.integer(), to: fc.integer() }),
    fc.constant({ wall: 'back wall' as const }),
  );
  const any = fc.record({
    floor: fc.array(point, { maxLength: 6 }),
    roof: fc.array(point, { maxLength: 6 }),
    openings: fc.array(opening, { maxLength: 3 }),
    regions: fc.array(fc.record({ name: fc.constant('A'), end: number, width: number }), { maxLength: 3 }),
    mouth: number,
    cavities: number,
    pivot: point,
    vents: fc.array(fc.record({ place: number, area: number, blocked: number }), { maxLength: 2 }),
  });
  fc.assert(
    fc.property(any, (section) => {
      expect(Array.isArray(checkSection(section))).toBe(true);
    }),
    { seed: 90210, numRuns: 500 },
  );
});

test('a coat or a die temperature that cannot be is marked in its region', () => {
  const withHeat = (heat: Partial<Section['regions'][number]>): Section =>
    change({ regions: sound.regions.map((region, i) => (i === 1 ? { ...region, ...heat } : region)) });
  expect(checkSection(withHeat({ transfer: 1850, dieTemperature: 623 }))).toEqual([]);
  for (const transfer of [0, -5, Number.NaN, Number.POSITIVE_INFINITY])
    expect(checkSection(withHeat({ transfer })).map(({ path }) => path)).toEqual(['regions.1.transfer']);
  for (const dieTemperature of [-5, Number.NaN, 3000]) {
    const [issue] = checkSection(withHeat({ dieTemperature }));
    expect(issue?.path).toBe('regions.1.dieTemperature');
    expect(issue?.remedy).toContain('0 to 1200 °C');
  }
});
