import { cosine, sine } from '$src/core/elementary/sine';
import type { Section } from '$src/core/section/section';
import { levelPath } from './levelPath';
import { metalPolygons } from './metalPolygons';

/** How deep a basin is to its own slowest slosh, from wall to wall once. */
export interface DeepBasin {
  /** Wave number times mean depth, k H with k = π over the length of the surface. Shallow-water theory wants it small. */
  readonly waveNumberDepth: number;
  /** How much quicker the model sloshes than real metal, as a share: √(kH / tanh kH) − 1. */
  readonly tooQuick: number;
  /** The same to leading order, (kH)²/6. */
  readonly leadingError: number;
  readonly isDeep: boolean;
}

/** From here on the model's slosh is 4 % too quick or more. The limit is ours. */
const DEEP = 0.5;

/** Points this close to the level lie on it [m]. */
const ON_LEVEL = 1e-7;

/**
 * The slowest slosh of the metal as it stands at the start, before the tilt: the pool that holds most of it, taken as
 * a tank as long as its surface and as deep as its area over that length. Null when no metal stands there.
 * Source: linear waves in a rectangular tank, ω² = g k tanh(kH) (Lamb; Faltinsen & Timokha 2009, from memory).
 *
 * @param volume of metal [m³]
 * @param start inclination [rad]
 */
export function deepBasin(section: Section, volume: number, start: number): DeepBasin | null {
  const pools = levelPath(section, volume, start, start, null).pools[0]!;
  const pool = pools.toSorted((a, b) => b.volume - a.volume)[0];
  if (!pool) return null;
  const outline = metalPolygons(section, [pool], start)[0];
  if (!outline) return null;
  const length = surfaceLength(outline, pool.level, start);
  return length > 0 ? sloshOf(areaOf(outline), length) : null;
}

function sloshOf(area: number, length: number): DeepBasin {
  const waveNumberDepth = (Math.PI * area) / length ** 2;
  return {
    waveNumberDepth,
    tooQuick: Math.sqrt(waveNumberDepth / Math.tanh(waveNumberDepth)) - 1,
    leadingError: waveNumberDepth ** 2 / 6,
    isDeep: waveNumberDepth > DEEP,
  };
}

type Outline = readonly { readonly x: number; readonly y: number }[];

/** Horizontal length of what lies on the level [m]. */
function surfaceLength(outline: Outline, level: number, inclination: number): number {
  const [sin, cos] = [sine(inclination), cosine(inclination)];
  const across = outline
    .filter(({ x, y }) => Math.abs(x * sin + y * cos - level) < ON_LEVEL)
    .map(({ x, y }) => x * cos - y * sin);
  return across.length > 0 ? Math.max(...across) - Math.min(...across) : 0;
}

/** Area inside a closed outline [m²]. */
function areaOf(outline: Outline): number {
  const twice = outline.reduce((sum, { x, y }, i) => {
    const next = outline[(i + 1) % outline.length]!;
    return sum + x * next.y - next.x * y;
  }, 0);
  return Math.abs(twice) / 2;
}
