import { cosine, sine } from '$src/core/elementary/sine';
import type { Point, Section } from '$src/core/section/section';
import { regionAt, taperOf, widthAt } from '$src/core/section/widthAt';
import { metalPolygons } from './metalPolygons';
import type { Pool } from './pools';

/** What metal at rest touches. */
export interface PoolAreas {
  /** Die touched in each region, floor, walls, roof and sides [m²]; regions in the section's order. */
  readonly contact: readonly number[];
  /** Free surface [m²]. */
  readonly surface: number;
}

/** Two elevations this close are one [m]. */
const SAME_LEVEL = 1e-7;

/**
 * Areas of still metal, worked out along the outline of each pool, cut at the ends of regions and at the mouth.
 * @param pools of the section at this inclination [rad], from `levelPath`
 * @throws RangeError past upright, where floor and roof change places
 */
export function poolAreas(section: Section, pools: readonly Pool[], inclination: number): PoolAreas {
  if (!(cosine(inclination) > 0))
    throw new RangeError(`areas of a pool: got inclination ${inclination} rad, expected within ±π/2`);
  const contact = section.regions.map(() => 0);
  let surface = 0;
  for (const { a, b, level } of edgesOf(section, pools, inclination)) {
    const middle = (a.x + b.x) / 2;
    const region = regionAt(section, middle);
    const area = Math.hypot(b.x - a.x, b.y - a.y) * widthAt(section, middle, 'right');
    const isSurface = [a, b].every((point) => Math.abs(elevation(point, inclination) - level) < SAME_LEVEL);
    if (isSurface) surface += area;
    contact[region] = contact[region]! + (isSurface ? 0 : area) + sidesUnder(section, a, b, region);
  }
  return { contact, surface };
}

/** Edges of all outlines, cut where the width changes, each with the level of its pool. */
function edgesOf(section: Section, pools: readonly Pool[], inclination: number) {
  return pools.flatMap((pool) =>
    metalPolygons(section, [pool], inclination).flatMap((outline) =>
      outline.flatMap((from, i) =>
        pieces(section, from, outline[(i + 1) % outline.length]!).map(([a, b]) => ({
          a,
          b,
          level: pool.level,
        })),
      ),
    ),
  );
}

const elevation = ({ x, y }: Point, inclination: number): number =>
  x * sine(inclination) + y * cosine(inclination);

/**
 * Both side walls of each cavity, by the signed area under an edge: the outline runs along the floor first. Where the
 * width tapers each wall leans by half of it.
 */
function sidesUnder(section: Section, a: Point, b: Point, region: number): number {
  const sides = 2 * ((a.x + b.x) / 2 > section.mouth ? section.cavities : 1);
  const slant = Math.sqrt(1 + (taperOf(section, region) / 2) ** 2);
  return (sides * slant * ((a.x - b.x) * (a.y + b.y))) / 2;
}

/** An edge cut where the width changes. */
function pieces(section: Section, from: Point, to: Point): [Point, Point][] {
  const low = Math.min(from.x, to.x);
  const high = Math.max(from.x, to.x);
  const cuts = [...section.regions.map((region) => region.end), section.mouth].filter(
    (x) => x > low && x < high,
  );
  const places = [low, ...new Set(cuts.sort((a, b) => a - b)), high];
  if (from.x > to.x) places.reverse();
  if (low === high) return [[from, to]];
  const at = (x: number): Point => ({
    x,
    y: from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x),
  });
  return places.slice(1).map((x, i) => [at(places[i]!), at(x)]);
}
