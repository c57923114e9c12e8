import type { Book } from '$src/cells/kinds';
import { basinLengths } from './basinLengths';
import { fillHeight } from './fillHeight';
import { levelOrUphill } from './levelOrUphill';
import { settingDamper } from './settingDamper';
import { thinWallWindow } from './thinWall';
import { twoTilts } from './twoTilts';

/** An example book as listed in static/books.json; the page opens the first by itself. */
export interface Shelved {
  readonly file: string;
  readonly summary: string;
  readonly book: Book;
}

export const SHELF: readonly Shelved[] = [
  {
    file: 'level-or-uphill.pourbook.json',
    summary:
      'One arm poured three ways: level over a sill, uphill from a flush basin, and uphill over the same sill.',
    book: levelOrUphill,
  },
  {
    file: 'fill-height.pourbook.json',
    summary: 'Four fills of one basin: the lower the ladle leaves it, the later and faster the front.',
    book: fillHeight,
  },
  {
    file: 'two-tilts.pourbook.json',
    summary: 'A quick steady swing against a staged one, from the same good start.',
    book: twoTilts,
  },
  {
    file: 'pour-window.pourbook.json',
    summary: 'A wall of 4 mm: too quick folds, too slow is cold, and the map of what is left between.',
    book: thinWallWindow,
  },
  {
    file: 'basin-length.pourbook.json',
    summary: 'One arm and one weight of metal behind three basins: the longer, the later and the faster.',
    book: basinLengths,
  },
  {
    file: 'setting-the-damper.pourbook.json',
    summary: 'A machine that falls under its own weight, held by oil: two openings of one valve.',
    book: settingDamper,
  },
];
