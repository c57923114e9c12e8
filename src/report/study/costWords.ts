import { countText, fixed } from '../wording';
import { coarsePoints, type Grid } from './grid';

/** A study that waits to be begun. */
export interface StudyCost {
  readonly grid: Grid;
  /** Points known already, those refused beforehand among them, and how many of them were poured. */
  readonly known: number;
  readonly poured: number;
  /** Points that are poured first; 0 = only what follows the points is left. */
  readonly lacking: number;
  /** About how long so many pours take [s]; null when nothing tells. */
  readonly timeFor: (pours: number) => number | null;
}

/** What it will cost to begin a study, or to go on with it: pours, and about how long they take. */
export function costWords({ grid, known, poured, lacking, timeFor }: StudyCost): string {
  if (lacking === 0) return 'All its points are known. Some more pours are left, for its margins.';
  const isMap = grid.rows > 1 && grid.columns > 1;
  const left = grid.count - known;
  const more = poured > 0 ? ' more' : '';
  if (!isMap || left <= lacking)
    return `It takes ${poursText(left, more)}${timeText(timeFor(left))}, and a few for the margins.`;
  const isFirstLook = known + lacking === coarsePoints(grid).length;
  const first = `${poursText(lacking, more)} ${isFirstLook ? 'for a first look' : 'along the edges'}${timeText(timeFor(lacking))}`;
  return `It takes ${first}, then those ${isFirstLook ? 'along the edges' : 'they lead to'}, ${left} at most${timeText(timeFor(left))}, and a few for the margins.`;
}

const poursText = (count: number, more: string): string => countText(count, 'pour').replace(/ /, `${more} `);

const timeText = (seconds: number | null): string =>
  seconds === null ? '' : ` (about ${roundTime(seconds)})`;

function roundTime(seconds: number): string {
  if (seconds < 1.5) return 'a second';
  if (seconds < 10) return `${fixed(seconds, 0)} s`;
  if (seconds < 90) return `${5 * Math.round(seconds / 5)} s`;
  return `${fixed(seconds / 60, 0)} min`;
}
