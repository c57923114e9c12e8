import { type Box, meet } from '$src/report/drawing/box';
import type { Plot, Spot } from './chart';
import { boxAt, dense, hits, hitsIn, isInside, type Strips, stripsOf, textWidth } from './labelRoom';

export interface LabelWanted {
  readonly key: string;
  readonly text: string;
  /** The curve in pixels. */
  readonly points: readonly Spot[];
  /** Room for the curve's marker before the words [px]. */
  readonly mark?: number;
  /** Sought at its end or start first, where eyes look for it. */
  readonly isAtEnd?: boolean;
}

/** From the words to the curve they name. */
export interface Leader {
  readonly from: Spot;
  readonly to: Spot;
}

export interface LabelPlaced {
  readonly key: string;
  readonly text: string;
  /** Middle of the label, and baseline and left edge of its words [px]. */
  readonly x: number;
  readonly y: number;
  readonly wordsAt: number;
  /** Room that words and marker take [px]. */
  readonly box: Box;
  /** On nothing: neither a curve nor other words, and inside the plot. */
  readonly isFree: boolean;
  /** Words that stand away from their curve are led to it. */
  readonly leader: Leader | null;
}

interface Candidate {
  readonly x: number;
  readonly y: number;
  readonly box: Box;
  readonly leader: Leader | null;
}

/** Shares along the curve tried in this order; the first ones also with a leader. */
const SHARES = [0.8, 0.62, 0.45, 0.3, 0.92, 0.15, 0.7, 0.53, 0.38, 0.98, 0.05];
const END_SHARES = [0.97, 0.04, 0.9, 0.12, 0.8, 0.2, 0.7, 0.3, 0.6, 0.4, 0.5];
const LED_SHARES = 6;
/** How far led words stand from their curve [px]. */
const DISTANCES = [20, 36, 56, 80, 108];
const DIRECTIONS: readonly Spot[] = [
  [0, -1],
  [0, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
];

/** What a place costs: words on words are worst, words that are cut off next; a leader is better than words on a curve. */
const ON_LABEL = 1000;
const OUTSIDE = 400;
const LEADER_THROUGH_LABEL = 300;
const ON_CURVE = 45;
const ON_POINT = 3;
const LED = 12;
const LEADER_THROUGH_POINT = 6;
/** A label placed early gives way when a later one has found its place: so often [rounds]. */
const ROUNDS = 4;

function beside(point: Spot, width: number, plot: Plot): Candidate[] {
  const places: readonly Spot[] = [
    [point[0], point[1] - 9],
    [point[0], point[1] + 18],
    [point[0] + width / 2 + 9, point[1] + 4],
    [point[0] - width / 2 - 9, point[1] + 4],
  ];
  return places.map(([wanted, y]) => {
    const x = Math.min(plot.right - width / 2, Math.max(plot.left + width / 2, wanted));
    return { x, y, box: boxAt(x, y, width), leader: null };
  });
}

/** Words some way off the curve, with a line to it. */
function led(point: Spot, width: number): Candidate[] {
  return DISTANCES.flatMap((distance) =>
    DIRECTIONS.map(([across, down]) => {
      const x = point[0] + across * (width / 2 + distance / 2);
      const y = down < 0 ? point[1] - distance : point[1] + distance + 9;
      const box = boxAt(x, y, width);
      const from: Spot = [Math.min(box.right, Math.max(box.left, point[0])), down < 0 ? box.bottom : box.top];
      return { x, y, box, leader: { from, to: point } };
    }),
  );
}

const spotsOf = (points: readonly Spot[], isAtEnd: boolean): Spot[] =>
  (isAtEnd ? END_SHARES : SHARES).map((share) => points[Math.round(share * (points.length - 1))]!);

const along = ({ from, to }: Leader): Spot[] => dense([from, to]);
const length = ({ from, to }: Leader): number => Math.hypot(to[0] - from[0], to[1] - from[1]);

const lengthCost = (leader: Leader): number => LED + length(leader) / 3;

/** What a leader costs for the other curves in its way; it ends on its own. */
function crossingCost(leader: Leader, others: readonly Strips[]): number {
  const near = along(leader).map(([x, y]): Box => ({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 }));
  const crossed = others.filter((curve) => near.some((box) => hitsIn(box, curve) > 0)).length;
  return crossed * LEADER_THROUGH_POINT;
}

/** What two labels cost each other. */
function together(a: Candidate, b: Candidate): number {
  const led = (one: Candidate, other: Candidate): boolean =>
    one.leader !== null && hits(other.box, along(one.leader)) > 0;
  return (meet(a.box, b.box) ? ON_LABEL : 0) + (led(a, b) || led(b, a) ? LEADER_THROUGH_LABEL : 0);
}

interface Tried {
  readonly candidate: Candidate;
  /** What it costs at the least: told at once, where the whole is counted out on curves. */
  readonly least: number;
  /** Counted once, and only of a place that may still be the best. */
  readonly cost: () => number;
}

/** The places of one label; those with a leader are sought once they are needed. */
interface Places {
  readonly beside: readonly Tried[];
  readonly led: () => readonly Tried[];
}

const onCurve = (points: number): number => (points > 0 ? ON_CURVE + points * ON_POINT : 0);
/** A short label among many curves is laid over none of them, and led past as few as can be: so many times the cost. */
const AT_END = 3;

/** A place costs a little more the later it is tried. */
const PER_ORDER = 0.25;
const PLACES_BESIDE = SHARES.length * 4;
/** No place with a leader costs less. */
const LEAST_LED = LED + PLACES_BESIDE * PER_ORDER;

/** Every place of one label with what it costs for itself. */
function placesOf(
  own: readonly Spot[],
  isAtEnd: boolean,
  width: number,
  curves: readonly Strips[],
  others: readonly Strips[],
  plot: Plot,
  taken: readonly Box[],
): Places {
  const weight = isAtEnd ? AT_END : 1;
  const tried = (candidate: Candidate, order: number): Tried => {
    const { box, leader } = candidate;
    const least =
      taken.filter((other) => meet(box, other)).length * ON_LABEL +
      (isInside(box, plot) ? 0 : OUTSIDE) +
      (leader ? lengthCost(leader) : 0) +
      order * PER_ORDER;
    let counted: number | undefined;
    const cost = (): number => {
      counted ??=
        curves.reduce((sum, curve) => sum + weight * onCurve(hitsIn(box, curve)), least) +
        (leader ? weight * crossingCost(leader, others) : 0);
      return counted;
    };
    return { candidate, least, cost };
  };
  const spots = spotsOf(own, isAtEnd);
  let far: readonly Tried[] | undefined;
  return {
    beside: spots.flatMap((spot) => beside(spot, width, plot)).map(tried),
    led: () => {
      far ??= spots
        .slice(0, LED_SHARES)
        .flatMap((spot) => led(spot, width))
        .map((candidate, order) => tried(candidate, PLACES_BESIDE + order));
      return far;
    },
  };
}

interface Best {
  readonly candidate: Candidate;
  readonly whole: number;
}

/** The cheapest of these places beside the other labels; the one so far where none costs less. */
function cheaper(tried: readonly Tried[], others: readonly Candidate[], sofar: Best): Best {
  let best = sofar;
  for (const { candidate, least, cost } of tried) {
    if (least >= best.whole || cost() >= best.whole) continue;
    const whole = others.reduce((sum, other) => sum + together(candidate, other), cost());
    if (whole < best.whole) best = { candidate, whole };
  }
  return best;
}

function cheapest(places: Places, others: readonly Candidate[]): Candidate {
  const worst = { candidate: places.beside[0]!.candidate, whole: Number.POSITIVE_INFINITY };
  const near = cheaper(places.beside, others, worst);
  return (near.whole <= LEAST_LED ? near : cheaper(places.led(), others, near)).candidate;
}

/**
 * A place for each label beside its own curve, off every curve, off the other labels and `lines` and inside the plot;
 * where there is none beside it, one further off with a leader.
 * A label that finds only bad places takes the least bad one: an unnamed line would be worse.
 */
export function placeDirectLabels(
  wanted: readonly LabelWanted[],
  plot: Plot,
  taken: readonly Box[] = [],
  lines: readonly (readonly Spot[])[] = [],
): LabelPlaced[] {
  const named = wanted.filter(({ points }) => points.length > 0);
  const curves = [...named.map(({ points }) => points), ...lines].map(stripsOf);
  const tried = named.map(({ text, points, mark = 0, isAtEnd = false }, own) => {
    const others = curves.filter((_, index) => index !== own);
    return placesOf(dense(points), isAtEnd, textWidth(text) + mark, curves, others, plot, taken);
  });
  const placed: Candidate[] = [];
  for (let round = 0; round < ROUNDS; round++)
    tried.forEach((places, index) => {
      placed[index] = cheapest(
        places,
        placed.filter((_, other) => other !== index),
      );
    });
  return named.map(({ key, text, mark = 0 }, index) => {
    const { x, y, box, leader } = placed[index]!;
    const isFree =
      isInside(box, plot) &&
      curves.every((curve) => hitsIn(box, curve) === 0) &&
      ![...taken, ...placed.filter((_, other) => other !== index).map((other) => other.box)].some((other) =>
        meet(box, other),
      );
    return { key, text, x, y, wordsAt: box.left + mark + 3, box, isFree, leader };
  });
}
