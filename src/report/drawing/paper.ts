import type { Point } from '$src/core/section/section';
import type { Box } from './box';

/** A point of the page [px], y down. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Die frame [m] at one inclination [rad] onto the page [px]. */
export interface Paper {
  readonly inclination: number;
  /** [px per m] */
  readonly scale: number;
  place(point: Point): Spot;
}

interface Extent {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Lab frame of a point: horizontal, and height upward [m]. */
const turned = ({ x, y }: Point, inclination: number): Spot => ({
  x: x * Math.cos(inclination) - y * Math.sin(inclination),
  y: x * Math.sin(inclination) + y * Math.cos(inclination),
});

function extentOf(points: readonly Point[], inclination: number): Extent {
  const spots = points.map((point) => turned(point, inclination));
  const xs = spots.map(({ x }) => x);
  const ys = spots.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** The largest scale at which the points fit a box at this inclination [px per m]. */
export function fittingScale(points: readonly Point[], inclination: number, box: Box): number {
  const { left, right, low, high } = extentOf(points, inclination);
  return Math.min((box.right - box.left) / (right - left), (box.bottom - box.top) / (high - low));
}

/** Puts the points in the middle of a box. */
export function paperFor(
  points: readonly Point[],
  inclination: number,
  box: Box,
  scale = fittingScale(points, inclination, box),
): Paper {
  const { left, right, low, high } = extentOf(points, inclination);
  const middle = { x: (left + right) / 2, y: (low + high) / 2 };
  return {
    inclination,
    scale,
    place(point) {
      const spot = turned(point, inclination);
      return {
        x: (box.left + box.right) / 2 + (spot.x - middle.x) * scale,
        y: (box.top + box.bottom) / 2 - (spot.y - middle.y) * scale,
      };
    },
  };
}

export const short = (value: number): string => String(Number(value.toFixed(1)));

/** A straight path through places on the page. */
export function pathOf(spots: readonly Spot[], isClosed = false): string {
  const d = spots.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('');
  return isClosed && d !== '' ? `${d}Z` : d;
}

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
