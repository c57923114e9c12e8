import type { Turn } from '$src/core/tilt/turns';
import { toDegrees } from '$src/core/units';
import { type Box, meet } from '$src/report/drawing/box';
import { fixed } from '$src/report/wording';

/** Words in the chart of a tilt [px]; `end`: they end at x. */
export interface TiltLabel {
  readonly words: string;
  readonly x: number;
  readonly y: number;
  readonly end: boolean;
}

/** What the words have to fit in with. */
export interface TiltScene {
  readonly turns: readonly Turn[];
  /** When each turn begins [s]. */
  readonly begins: readonly number[];
  /** The curve as drawn [px]. */
  readonly curve: readonly { readonly x: number; readonly y: number }[];
  readonly x: (time: number) => number;
  readonly y: (degrees: number) => number;
  /** Where the scale of time begins and ends, and the chart [px]. */
  readonly left: number;
  readonly right: number;
  readonly width: number;
}

export const DIE_LEVEL = 'die level';

/** Room for a bold letter and for a plain one, a line's height over its baseline and under it [px]. */
const BOLD = 7.2;
const PLAIN = 6.4;
const OVER = 11;
const UNDER = 3;
/** From the curve to the words beside it, and from the line of the level to its words [px]. */
const BESIDE = 10;
const LIFT = 5;
const SINK = 14;

function boxOf({ words, x, y, end }: TiltLabel, letter: number): Box {
  const wide = words.length * letter;
  return { left: end ? x - wide : x, right: end ? x : x + wide, top: y - OVER, bottom: y + UNDER };
}

/** The rate of each stage beside the middle of its line, to the left and below where the chart ends too soon. */
export function rateLabels({ turns, begins, x, y, width }: TiltScene): TiltLabel[] {
  return turns.map(({ from, to, time, rate }, index) => {
    const words = `${fixed(toDegrees(rate), 1).replace(/\.0$/, '')} °/s`;
    const middle = x(begins[index]! + time / 2);
    const isCut = middle + BESIDE + words.length * BOLD > width;
    const half = y(toDegrees((from + to) / 2));
    return isCut
      ? { words, x: middle - BESIDE, y: half + 16, end: true }
      : { words, x: middle + BESIDE, y: half - 8, end: false };
  });
}

/** Places along the line of the level where its words may stand, from the right end on. */
const STEPS = 12;

/** Where the line of the level is named: at its right end, else where neither a rate nor the curve is. */
export function levelLabel(scene: TiltScene): TiltLabel {
  const { curve, y, left, right } = scene;
  const wide = DIE_LEVEL.length * PLAIN;
  const rates = rateLabels(scene).map((label) => boxOf(label, BOLD));
  const at = (x: number, down: number): TiltLabel => ({ words: DIE_LEVEL, x, y: y(0) + down, end: true });
  const room = Math.max(0, right - left - 4 - wide);
  const places = Array.from({ length: STEPS + 1 }, (_, k) => right - (room * k) / STEPS);
  const choices = places.flatMap((x) => [at(x, -LIFT), at(x, SINK)]);
  const isFree = (label: TiltLabel): boolean => {
    const box = boxOf(label, PLAIN);
    const isOnCurve = curve.some(
      (spot) => spot.x > box.left && spot.x < box.right && spot.y > box.top && spot.y < box.bottom,
    );
    return !isOnCurve && !rates.some((rate) => meet(box, rate));
  };
  return choices.find(isFree) ?? choices[0]!;
}
