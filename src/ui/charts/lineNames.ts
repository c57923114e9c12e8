import { shortNames } from '$src/report/shortNames';
import type { ChartSeries, Plot, Spot } from './chart';
import { type LabelPlaced, type LabelWanted, placeDirectLabels } from './directLabels';
import { isBackground, isRun } from './runLook';

/** A curve to be named, in pixels. */
export interface NamedCurve extends Pick<ChartSeries, 'key' | 'name' | 'look'> {
  readonly shown: readonly Spot[];
}

export interface LineNames {
  readonly wanted: readonly LabelWanted[];
  readonly placed: readonly LabelPlaced[];
  /** The names stand in a key above the plot, too. */
  readonly isKeyed: boolean;
  /** What stands at a line in place of its name, and before the name in the key; by the key of the curve. */
  readonly tags: ReadonlyMap<string, string>;
}

type Place = (wanted: readonly LabelWanted[]) => readonly LabelPlaced[];

/**
 * What stands at each line: its name; where several runs leave no room for that, a short one, and where they leave none
 * for those either, or on a phone, its number. The whole names then stand in a key above.
 *
 * @param mark room for the marker of a run before its words [px]
 */
export function lineNames(
  curves: readonly NamedCurve[],
  mark: number,
  isNarrow: boolean,
  place: Place,
): LineNames {
  const runs = curves.filter(({ look }) => isRun(look));
  const texts = (textOf: (curve: NamedCurve) => string, isAtEnd = false): LabelWanted[] =>
    curves.map((curve) => ({
      isAtEnd,
      key: curve.key,
      text: textOf(curve),
      points: curve.shown,
      mark: isRun(curve.look) ? mark : 0,
    }));
  const asNames = texts(({ name }) => name);
  if (isNarrow && curves.length > 1 && runs.length < 2)
    return { wanted: asNames, placed: [], isKeyed: true, tags: NO_TAGS };
  if (!isNarrow || curves.length < 2) {
    const placed = place(asNames);
    if (runs.length < 3 || placed.every(({ isFree }) => isFree))
      return { wanted: asNames, placed, isKeyed: false, tags: NO_TAGS };
    const shorter = shortNames(curves.map(({ name }) => name));
    if (shorter) {
      const wanted = texts((curve) => shorter[curves.indexOf(curve)]!, true);
      const tried = place(wanted);
      if (tried.every(isNear)) return { wanted, placed: tried, isKeyed: true, tags: NO_TAGS };
    }
  }
  const tags = tagsOf(curves);
  const wanted = texts(({ key }) => tags.get(key)!, true);
  return { wanted, placed: place(wanted), isKeyed: true, tags };
}

/** A leader longer than this is hard to follow among many lines [px]. */
const LONGEST_LEADER = 60;
const isNear = ({ isFree, leader }: LabelPlaced): boolean =>
  isFree &&
  (leader === null ||
    Math.hypot(leader.from[0] - leader.to[0], leader.from[1] - leader.to[1]) <= LONGEST_LEADER);

const NO_TAGS: ReadonlyMap<string, string> = new Map();

/** Runs are counted; what stands behind them is counted by itself. */
function tagsOf(curves: readonly NamedCurve[]): ReadonlyMap<string, string> {
  const [behind, before] = [true, false].map((is) => curves.filter(({ look }) => isBackground(look) === is));
  return new Map([
    ...before!.map(({ key }, index) => [key, String(index + 1)] as const),
    ...behind!.map(({ key }, index) => [key, `L${behind!.length > 1 ? index + 1 : ''}`] as const),
  ]);
}

/** Names of curves in a plot, off what is taken and off its lines. */
export const placesIn =
  (
    plot: Plot,
    taken: Parameters<typeof placeDirectLabels>[2],
    lines: Parameters<typeof placeDirectLabels>[3],
  ): Place =>
  (wanted) =>
    placeDirectLabels(wanted, plot, taken, lines);
