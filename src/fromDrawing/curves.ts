import type { Point } from '$src/core/section/section';

/** Pieces a curve is cut into. A quarter circle of 50 mm radius then strays 0.06 mm from its chords at most. */
const PIECES = 16;
/** Largest turn of one piece of an arc [rad]. */
const ARC_STEP = Math.PI / 36;
/** Most that the chords of an arc stray from it, as a share of its radius: a thousandth. */
export const ARC_STRAY = 1 - Math.cos(ARC_STEP / 2);
/** The same as a share of the chord. */
export const ARC_BOW = Math.tan(ARC_STEP / 4) / 2;

/** Points of a cubic Bézier after its first, its end counted. */
export function cubicPoints(from: Point, a: Point, b: Point, to: Point): Point[] {
  return Array.from({ length: PIECES }, (_, index) => {
    const t = (index + 1) / PIECES;
    const s = 1 - t;
    const mix = (p: number, q: number, r: number, e: number): number =>
      s ** 3 * p + 3 * s * s * t * q + 3 * s * t * t * r + t ** 3 * e;
    return { x: mix(from.x, a.x, b.x, to.x), y: mix(from.y, a.y, b.y, to.y) };
  });
}

/** Points of a quadratic Bézier after its first, its end counted. */
export function quadraticPoints(from: Point, a: Point, to: Point): Point[] {
  const towards = (end: Point): Point => ({
    x: end.x + (2 / 3) * (a.x - end.x),
    y: end.y + (2 / 3) * (a.y - end.y),
  });
  return cubicPoints(from, towards(from), towards(to), to);
}

/** Points of an arc about a centre, both ends counted; the sweep is positive anticlockwise [rad]. */
export function arcPoints(centre: Point, radius: number, start: number, sweep: number): Point[] {
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / ARC_STEP));
  return Array.from({ length: count + 1 }, (_, index) => {
    const angle = start + (sweep * index) / count;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

/**
 * Points after the first of the arc between two vertices of a polyline, given by its bulge: the tangent of a quarter of
 * the angle it sweeps, positive anticlockwise (DXF reference, group code 42 of LWPOLYLINE). Straight at 0.
 */
export function bulgePoints(from: Point, to: Point, bulge: number): Point[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(dx, dy);
  if (bulge === 0 || chord === 0) return [to];
  const sweep = 4 * Math.atan(bulge);
  // Distance from the middle of the chord to the centre, along the normal to its left.
  const reach = (chord * (1 - bulge * bulge)) / (4 * bulge);
  const centre = {
    x: (from.x + to.x) / 2 - (dy / chord) * reach,
    y: (from.y + to.y) / 2 + (dx / chord) * reach,
  };
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  return [...arcPoints(centre, radius, start, sweep).slice(1, -1), to];
}
