import type { Point } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';

/** A place on the page [px], y down. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How the die frame lies on the page. */
export interface View {
  /** Size of the picture [px]. */
  readonly width: number;
  readonly height: number;
  /** [px per m] */
  readonly scale: number;
  /** Pivot in the die frame [m] and on the page [px]. */
  readonly pivot: Point;
  readonly origin: Spot;
  /** Angle the body is turned by on the page [rad], anticlockwise. */
  readonly turn: number;
}

/** Room kept free at each side of the body [px]. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Die frame [m] to page [px]. */
export function toPage(view: View, p: Point): Spot {
  const x = (p.x - view.pivot.x) * view.scale;
  const y = (p.y - view.pivot.y) * view.scale;
  const c = Math.cos(view.turn);
  const s = Math.sin(view.turn);
  return { x: view.origin.x + x * c - y * s, y: view.origin.y - (x * s + y * c) };
}

/** Page [px] to die frame [m]. */
export function toDie(view: View, spot: Spot): Point {
  const right = (spot.x - view.origin.x) / view.scale;
  const up = -(spot.y - view.origin.y) / view.scale;
  const c = Math.cos(view.turn);
  const s = Math.sin(view.turn);
  return { x: view.pivot.x + right * c + up * s, y: view.pivot.y - right * s + up * c };
}

/** Angles to look at so that bounds over a sweep miss nothing: its ends, the quarter turns inside, and every 3 degrees. */
function anglesOfSweep(start: number, end: number): number[] {
  const low = Math.min(start, end);
  const high = Math.max(start, end);
  const steps = Math.max(1, Math.ceil((high - low) / fromDegrees(3)));
  const angles = Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps);
  const quarter = Math.PI / 2;
  for (let q = Math.ceil(low / quarter); q * quarter <= high; q++) angles.push(q * quarter);
  return angles;
}

/** Bounds of the corners about the pivot [m], y down as on the page, over a whole sweep. */
export function sweepBounds(corners: readonly Point[], pivot: Point, start: number, end: number): Bounds {
  let left = 0;
  let right = 0;
  let top = 0;
  let bottom = 0;
  for (const angle of anglesOfSweep(start, end)) {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    for (const p of corners) {
      const x = (p.x - pivot.x) * c - (p.y - pivot.y) * s;
      const y = -((p.x - pivot.x) * s + (p.y - pivot.y) * c);
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return { left, right, top, bottom };
}

/** Largest scale [px per m] at which bounds and margins fit in a width and a height. */
export function scaleToFit(bounds: Bounds, margins: Margins, width: number, maxHeight: number): number {
  const across = Math.max(40, width - margins.left - margins.right) / (bounds.right - bounds.left);
  const down = Math.max(40, maxHeight - margins.top - margins.bottom) / (bounds.bottom - bounds.top);
  return Math.min(across, down);
}

/** A view at a given scale: the body in the middle of the width, the picture as high as bounds and margins need. */
export function viewAt(
  bounds: Bounds,
  margins: Margins,
  pivot: Point,
  scale: number,
  width: number,
): Omit<View, 'turn'> {
  const span = (bounds.right - bounds.left) * scale;
  const spare = width - margins.left - margins.right - span;
  return {
    width,
    height: Math.round(margins.top + margins.bottom + (bounds.bottom - bounds.top) * scale),
    scale,
    pivot,
    origin: { x: margins.left + spare / 2 - bounds.left * scale, y: margins.top - bounds.top * scale },
  };
}
