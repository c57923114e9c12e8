import fc from 'fast-check';
import type { PourPlan } from '$src/core/pour/plan';
import { checkSection } from '$src/core/section/checkSection';
import type { Point, Region, Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';

/** How often a property is tried: a few times in every test run, many times by `npm run test:long`. */
export const tries = (few: number): { numRuns: number; seed?: number; endOnFailure: boolean } => {
  const share = Number(process.env['QUIETPOUR_TRIES'] ?? 1);
  return share === 1
    ? { numRuns: few, seed: 20_26, endOnFailure: true }
    : { numRuns: Math.round(few * share), endOnFailure: true };
};

const length = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const degrees = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map(fromDegrees);

/** A floor of level, sloping and stepped stretches over the given x. */
function floorOver(
  places: readonly number[],
  heights: readonly number[],
  steps: readonly boolean[],
): Point[] {
  const floor: Point[] = [];
  places.forEach((x, k) => {
    if (k > 0 && k < places.length - 1 && steps[k]) floor.push({ x, y: heights[k - 1]! });
    floor.push({ x, y: heights[k]! });
  });
  return floor;
}

const shape = fc.record({
  basin: length(0.05, 0.2),
  die: length(0.08, 0.3),
  opening: length(0.008, 0.05),
  basinDepth: length(0.05, 0.12),
  heights: fc.array(length(-0.03, 0.03), { minLength: 6, maxLength: 6 }),
  inside: fc.array(length(0.1, 0.9), { minLength: 4, maxLength: 4 }),
  steps: fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
  width: length(0.02, 0.2),
  cavities: fc.integer({ min: 1, max: 4 }),
  /** Width of basin and die at their ends over that where they begin; null without a taper. */
  tapers: fc.array(fc.option(length(0.3, 3), { freq: 1 }), { minLength: 2, maxLength: 2 }),
  isFlush: fc.boolean(),
  isOpen: fc.boolean(),
});

const tapering = (region: Region, taper: number | null): Region =>
  taper === null ? region : { ...region, widthAtEnd: region.width * taper };

/**
 * A die-and-basin section: an open or roofed basin, a die under a roof that keeps its distance from any floor, half of
 * them of one width and half with a taper.
 */
export const sections: fc.Arbitrary<Section> = shape
  .map((s) => {
    const end = s.basin + s.die;
    const places = [0, ...[...s.inside].sort((a, b) => a - b).map((share) => share * end), end];
    const floor = s.isFlush
      ? [
          { x: 0, y: 0 },
          { x: end, y: 0 },
        ]
      : floorOver(places, s.heights, s.steps);
    const highest = Math.max(...floor.map((point) => point.y));
    const rim = highest + s.basinDepth + s.opening;
    const roof = [
      { x: 0, y: rim },
      { x: s.basin, y: rim },
      { x: s.basin, y: highest + s.opening },
      { x: end, y: highest + s.opening },
    ];
    return {
      floor,
      roof,
      openings: s.isOpen ? [{ wall: 'roof' as const, from: 0, to: 1 }] : [],
      regions: [
        tapering({ name: 'basin', end: s.basin, width: s.width }, s.tapers[0]!),
        tapering({ name: 'die', end, width: s.width / s.cavities }, s.tapers[1]!),
      ],
      mouth: s.basin,
      cavities: s.cavities,
      pivot: { x: s.basin, y: 0 },
      vents: [],
    };
  })
  .filter((section) => checkSection(section).length === 0);

const LIMITS = {
  highestStart: fromDegrees(75),
  lowestEnd: fromDegrees(-100),
  slowest: fromDegrees(0.5),
  quickest: fromDegrees(120),
};

/** A pour of any section: any charge that could be ladled, tilt, mesh and metal. */
export const plans: fc.Arbitrary<PourPlan> = fc
  .record({
    section: sections,
    share: length(0.1, 1.4),
    start: degrees(-10, 60),
    turn: degrees(20, 130),
    rate: degrees(10, 120),
    smoothing: fc.constantFrom(0, 0.1, 0.3),
    meshCells: fc.integer({ min: 20, max: 120 }),
    capillaryGate: fc.boolean(),
    isVented: fc.boolean(),
    contactAngle: degrees(60, 180),
  })
  .map(
    ({ section, share, start, turn, rate, smoothing, meshCells, capillaryGate, isVented, contactAngle }) => ({
      section,
      liquid: { density: 2400, viscosity: 1.3e-3, surfaceTension: 0.9, contactAngle, criticalSpeed: 0.5 },
      volume: share * roomPastMouth(section),
      tilt: {
        kind: 'steady' as const,
        start,
        end: Math.max(fromDegrees(-95), start - turn),
        rate,
        smoothing,
        limits: LIMITS,
      },
      computation: {
        meshCells,
        capillaryGate,
        settlingTime: 0.3,
        gas: isVented ? ('free' as const) : ('vents' as const),
      },
    }),
  );

/** About the volume of the cavities [m³]: enough to scale a charge by. */
function roomPastMouth({ roof, floor, mouth, regions }: Section): number {
  const end = floor.at(-1)!.x;
  const mean = floor.reduce((sum, point) => sum + point.y, 0) / floor.length;
  return (end - mouth) * (roof.at(-1)!.y - mean) * regions[0]!.width;
}

export const inclinations = degrees(-90, 60);
