import type { Point } from '$src/core/section/section';
import type { DrawnLine } from './drawing';

/** Ends nearer than this share of the drawing's size meet. */
const MEETING = 1e-5;

/** Open lines of one layer that meet end to end, joined into one; in the order of their first piece. */
export function joined(lines: readonly DrawnLine[]): DrawnLine[] {
  const near = MEETING * sizeOf(lines);
  const left = [...lines];
  const chains: DrawnLine[] = [];
  while (left.length > 0) {
    let chain = left.shift()!;
    if (!chain.isClosed) {
      for (let next = grown(chain, left, near); next !== null; next = grown(chain, left, near)) chain = next;
      const isRound = chain.points.length > 3 && meets(chain.points[0]!, chain.points.at(-1)!, near);
      chain = { ...chain, isClosed: isRound };
    }
    chains.push(chain);
  }
  return chains;
}

/** The chain with one more line at either end, which is taken out of those left; null when none meets it. */
function grown(chain: DrawnLine, left: DrawnLine[], near: number): DrawnLine | null {
  const [first, last] = [chain.points[0]!, chain.points.at(-1)!];
  for (let index = 0; index < left.length; index++) {
    const { layer, isClosed, points } = left[index]!;
    if (isClosed || layer !== chain.layer) continue;
    const [from, to] = [points[0]!, points.at(-1)!];
    const more = meets(last, from, near)
      ? [...chain.points, ...points.slice(1)]
      : meets(last, to, near)
        ? [...chain.points, ...points.toReversed().slice(1)]
        : meets(first, to, near)
          ? [...points, ...chain.points.slice(1)]
          : meets(first, from, near)
            ? [...points.toReversed(), ...chain.points.slice(1)]
            : null;
    if (!more) continue;
    left.splice(index, 1);
    return { ...chain, points: more };
  }
  return null;
}

const meets = (a: Point, b: Point, near: number): boolean => Math.hypot(a.x - b.x, a.y - b.y) <= near;

function sizeOf(lines: readonly DrawnLine[]): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { points } of lines)
    for (const { x, y } of points) {
      low = Math.min(low, x, y);
      high = Math.max(high, x, y);
    }
  return high > low ? high - low : 1;
}
