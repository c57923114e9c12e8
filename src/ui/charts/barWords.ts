import { type Box, meet } from '$src/report/drawing/box';
import type { Plot, Spot } from './chart';
import { dense, hits, textWidth } from './labelRoom';

/** A span on the foot of a chart, in pixels. */
export interface Bar {
  readonly left: number;
  readonly right: number;
  readonly label: string;
}

export interface BarWords {
  /** Left edge and baseline of the words [px]. */
  readonly x: number;
  readonly y: number;
  readonly box: Box;
  /** Words that a low curve keeps off the bar are led to it: height from which down. */
  readonly ledFrom: number | null;
}

/** Baseline of words that stand on their bar, over the foot of the chart; and the height tried next [px]. */
const ON_BAR = 13;
const STEP = 6;
const SHIFT = 4;

const boxAt = (x: number, y: number, width: number): Box => ({
  left: x,
  right: x + width,
  top: y - 11,
  bottom: y + 3,
});

/** From the end of a bar to words after it [px]. */
const AFTER = 5;

/** Left edges to try: from the start of the bar along it, then before it, then after it. */
function starts({ left, right }: Bar, width: number, plot: Plot): number[] {
  const last = plot.right - width;
  const first = Math.max(plot.left + 2, left - width);
  const clamp = (x: number): number => Math.min(last, Math.max(first, x));
  const steps = (length: number): number[] =>
    Array.from({ length: Math.max(1, Math.floor(length / SHIFT)) }, (_, i) => i * SHIFT);
  return [
    ...steps(right - left).map((step) => clamp(left + step)),
    ...steps(width).map((step) => clamp(left - step)),
    clamp(right + AFTER),
  ];
}

/**
 * Words of a bar: on it from its start; where a low curve runs or the cursor stands, further along; and where the curve is low all along
 * the bar, above the curve with a leader. `taken`: what else the words must not lie on.
 */
export function barWords(
  bar: Bar,
  plot: Plot,
  curves: readonly (readonly Spot[])[],
  taken: readonly Box[],
): BarWords {
  const width = textWidth(bar.label);
  const spots = curves.map(dense);
  let best: BarWords | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let y = plot.bottom - ON_BAR; y - 11 > plot.top; y -= STEP) {
    const lift = plot.bottom - ON_BAR - y;
    for (const x of starts(bar, width, plot)) {
      const box = boxAt(x, y, width);
      const cost =
        spots.reduce((sum, curve) => sum + hits(box, curve) * 10, 0) +
        taken.filter((other) => meet(box, other)).length * 200 +
        (lift > 0 ? 20 + lift : 0) +
        Math.abs(x - bar.left) / 20;
      if (cost < least) [best, least] = [{ x, y, box, ledFrom: lift > 0 ? y + 4 : null }, cost];
    }
    if (least < lift + 20) break;
  }
  return (
    best ?? {
      x: bar.left,
      y: plot.bottom - ON_BAR,
      box: boxAt(bar.left, plot.bottom - ON_BAR, width),
      ledFrom: null,
    }
  );
}
