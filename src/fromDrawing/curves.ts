import type { Point } from '$src/core/section/section';

/** Pieces a curve is cut into at the least, and at the most. */
const [FEWEST_CHORDS, MOST_CHORDS] = [16, 500];
/** Largest turn of one piece of an arc, and smallest [rad]. */
const ARC_STEP = Math.PI / 36;
const SMALLEST_STEP = Math.PI / 1440;
/** Most that the chords of an arc stray from it where nothing finer is asked, as a share of its radius: a thousandth. */
export const ARC_STRAY = 1 - Math.cos(ARC_STEP / 2);
/** The same as a share of the chord. */
export const ARC_BOW = Math.tan(ARC_STEP / 4) / 2;

/** Points of a cubic Bézier after its first, its end counted; its chords stray from it by `stray` at most. */
export function cubicPoints(from: Point, a: Point, b: Point, to: Point, stray = Infinity): Point[] {
  const pieces = cubicPieces(from, a, b, to, stray);
  return Array.from({ length: pieces }, (_, index) => {
    const t = (index + 1) / pieces;
    const s = 1 - t;
    const mix = (p: number, q: number, r: number, e: number): number =>
      s ** 3 * p + 3 * s * s * t * q + 3 * s * t * t * r + t ** 3 * e;
    return { x: mix(from.x, a.x, b.x, to.x), y: mix(from.y, a.y, b.y, to.y) };
  });
}

/** A chord over a step h of the parameter strays by h²/8 of the largest second derivative at most, which is at an end. */
function cubicPieces(from: Point, a: Point, b: Point, to: Point, stray: number): number {
  const bend = (p: Point, q: Point, r: Point): number =>
    6 * Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  const pieces = Math.ceil(Math.sqrt(Math.max(bend(from, a, b), bend(a, b, to)) / (8 * stray)));
  return Math.min(MOST_CHORDS, Math.max(FEWEST_CHORDS, pieces));
}

/** Points of a quadratic Bézier after its first, its end counted; its chords stray from it by `stray` at most. */
export function quadraticPoints(from: Point, a: Point, to: Point, stray = Infinity): Point[] {
  const towards = (end: Point): Point => ({
    x: end.x + (2 / 3) * (a.x - end.x),
    y: end.y + (2 / 3) * (a.y - end.y),
  });
  return cubicPoints(from, towards(from), towards(to), to, stray);
}

/** An arc about a centre; the sweep is positive anticlockwise [rad]. */
export interface Arc {
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

/** Points of an arc, both ends counted. Its chords stray from it by `stray` at most, and by ARC_STRAY of its radius. */
export function arcPoints({ centre, radius, start, sweep }: Arc, stray = Infinity): Point[] {
  const asked = 2 * Math.acos(Math.max(0, 1 - stray / radius));
  const step = Math.min(ARC_STEP, Math.max(SMALLEST_STEP, asked));
  // As many pieces before the middle of the arc as after it.
  const count = 2 * Math.max(1, Math.ceil(Math.abs(sweep) / step / 2));
  return Array.from({ length: count + 1 }, (_, index) => {
    const angle = start + (sweep * index) / count;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

/**
 * Points after the first of the arc between two vertices of a polyline, given by its bulge: the tangent of a quarter of
 * the angle it sweeps, positive anticlockwise (DXF reference, group code 42 of LWPOLYLINE). Straight at 0.
 */
export function bulgePoints(from: Point, to: Point, bulge: number, stray = Infinity): Point[] {
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
  return [...arcPoints({ centre, radius, start, sweep }, stray).slice(1, -1), to];
}
