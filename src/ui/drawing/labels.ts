import { fromDegrees } from '$src/core/units';
import { type Box, meet } from '$src/report/drawing/box';
import type { Spot } from './view';

/** What is to be named on the picture. */
export interface LabelWish {
  readonly key: string;
  /** Lines of text; the first may be bold. */
  readonly lines: readonly string[];
  /** The place it names [px]. */
  readonly anchor: Spot;
  /** Where the label would best lie, seen from the anchor (any length, y down). */
  readonly towards: Spot;
  /** Size of the label [px]; left out = estimated from the text. */
  readonly size?: { readonly width: number; readonly height: number };
}

export interface PlacedLabel {
  readonly wish: LabelWish;
  readonly box: Box;
  /** Middle of the label [px]. */
  readonly middle: Spot;
  /** Where the leader ends at the label [px]. */
  readonly leaderEnd: Spot;
  /** Candidate taken, to be offered again so that labels do not jump while the body turns. */
  readonly choice: string;
}

const LINE_HEIGHT = 15;
const CHARACTER = 6.5;
const TURNS = [0, 20, -20, 40, -40, 62, -62, 85, -85, 115, -115, 150, -150];
const REACHES = [24, 38, 54, 74, 98, 126, 160];
const GAP = 4;

export const labelSize = (lines: readonly string[]): { width: number; height: number } => ({
  width: Math.max(...lines.map((line) => line.length)) * CHARACTER + 4,
  height: lines.length * LINE_HEIGHT,
});

/**
 * Places labels in the order given, so that none lies on another, on steel, on something else already drawn or outside
 * the picture. What finds no place is left out: a missing name harms less than one nobody can read.
 * `before` are choices of the last picture.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  bodies: readonly (readonly Spot[])[],
  taken: readonly Box[],
  picture: { readonly width: number; readonly height: number },
  before: ReadonlyMap<string, string> = new Map(),
): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const wish of wishes) {
    const found = bestPlace(wish, bodies, taken, placed, picture, before.get(wish.key));
    if (found) placed.push(found);
  }
  return placed;
}

function bestPlace(
  wish: LabelWish,
  bodies: readonly (readonly Spot[])[],
  taken: readonly Box[],
  placed: readonly PlacedLabel[],
  picture: { readonly width: number; readonly height: number },
  before: string | undefined,
): PlacedLabel | null {
  let best: PlacedLabel | null = null;
  let bestCost = Infinity;
  for (const candidate of candidatesOf(wish)) {
    const cost = candidate.cost - (candidate.label.choice === before ? 60 : 0);
    if (cost >= bestCost || !fits(candidate.label, bodies, taken, placed, picture)) continue;
    best = candidate.label;
    bestCost = cost;
  }
  return best;
}

function candidatesOf(wish: LabelWish): { label: PlacedLabel; cost: number }[] {
  const size = wish.size ?? labelSize(wish.lines);
  const preferred = Math.atan2(wish.towards.y, wish.towards.x);
  return TURNS.flatMap((turn) => {
    const angle = preferred + fromDegrees(turn);
    const toX = Math.cos(angle);
    const toY = Math.sin(angle);
    return REACHES.map((reach) => {
      const end = { x: wish.anchor.x + toX * reach, y: wish.anchor.y + toY * reach };
      const middle = { x: end.x + toX * (size.width / 2 + 3), y: end.y + toY * (size.height / 2 + 2) };
      return {
        label: labelAt(wish, middle, end, size, `${turn}/${reach}`),
        cost: reach + Math.abs(turn) * 0.7,
      };
    });
  });
}

function labelAt(
  wish: LabelWish,
  middle: Spot,
  leaderEnd: Spot,
  size: { readonly width: number; readonly height: number },
  choice: string,
): PlacedLabel {
  const box = {
    left: middle.x - size.width / 2,
    right: middle.x + size.width / 2,
    top: middle.y - size.height / 2,
    bottom: middle.y + size.height / 2,
  };
  return { wish, box, middle, leaderEnd, choice };
}

function fits(
  label: PlacedLabel,
  bodies: readonly (readonly Spot[])[],
  taken: readonly Box[],
  placed: readonly PlacedLabel[],
  picture: { readonly width: number; readonly height: number },
): boolean {
  const { box } = label;
  if (box.left < 4 || box.top < 4 || box.right > picture.width - 4 || box.bottom > picture.height - 4)
    return false;
  if (taken.some((t) => meet(box, t, GAP))) return false;
  for (const other of placed) {
    if (meet(box, other.box, GAP)) return false;
    if (lineMeetsBox(label.wish.anchor, label.leaderEnd, other.box)) return false;
    if (lineMeetsBox(other.wish.anchor, other.leaderEnd, box)) return false;
    if (linesCross(label.wish.anchor, label.leaderEnd, other.wish.anchor, other.leaderEnd)) return false;
  }
  return !bodies.some((body) => bodyMeetsBox(body, box));
}

/** Whether a closed outline touches a box: an edge crosses it, or it lies inside. */
export function bodyMeetsBox(body: readonly Spot[], box: Box): boolean {
  for (let i = 0; i < body.length; i++) {
    if (lineMeetsBox(body[i]!, body[(i + 1) % body.length]!, box)) return true;
  }
  return isInside(body, { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 });
}

/** Whether the straight a to b enters a box. */
export function lineMeetsBox(a: Spot, b: Spot, box: Box): boolean {
  let from = 0;
  let to = 1;
  const clip = (start: number, step: number, low: number, high: number): boolean => {
    if (step === 0) return start >= low && start <= high;
    const one = (low - start) / step;
    const two = (high - start) / step;
    from = Math.max(from, Math.min(one, two));
    to = Math.min(to, Math.max(one, two));
    return from <= to;
  };
  return clip(a.x, b.x - a.x, box.left, box.right) && clip(a.y, b.y - a.y, box.top, box.bottom);
}

function linesCross(a: Spot, b: Spot, c: Spot, d: Spot): boolean {
  const side = (p: Spot, q: Spot, r: Spot) =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function isInside(body: readonly Spot[], p: Spot): boolean {
  let inside = false;
  for (let i = 0, j = body.length - 1; i < body.length; j = i++) {
    const a = body[i]!;
    const b = body[j]!;
    if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}
