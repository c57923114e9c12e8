import type { Book } from '$src/cells/kinds';
import { basinLengths } from './basinLengths';
import { betterTilt } from './betterTilt';
import { castingsLog } from './castingsLog';
import { ladle } from './class/ladle';
import { oxideFilm } from './class/oxideFilm';
import { pastLevel } from './class/pastLevel';
import { readWindow } from './class/readWindow';
import { sillJet } from './class/sillJet';
import { uphill } from './class/uphill';
import { fillHeight } from './fillHeight';
import { levelOrUphill } from './levelOrUphill';
import { settingDamper } from './settingDamper';
import { thinWallWindow } from './thinWall';
import { twoTilts } from './twoTilts';

export const FOR_A_CLASS = 'For a class';

/** An example book as listed in static/books.json; the page opens the first by itself. */
export interface Shelved {
  readonly file: string;
  readonly summary: string;
  /** Heading it stands under in the list; absent = none. */
  readonly group?: typeof FOR_A_CLASS;
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
  {
    file: 'better-tilt.pourbook.json',
    summary: 'A tilt told by a phone on the frame folds film; led by its front, the same arm does better.',
    book: betterTilt,
  },
  {
    file: 'castings-log.pourbook.json',
    summary: 'Castings good and bad against what was predicted of them, and what so few can say.',
    book: castingsLog,
  },
  {
    file: 'class-oxide-film.pourbook.json',
    summary: 'What an oxide film is, the critical speed as a sum, and two pours to guess.',
    group: FOR_A_CLASS,
    book: oxideFilm,
  },
  {
    file: 'class-uphill.pourbook.json',
    summary: 'Why the die starts uphill: how it lies when metal first comes in.',
    group: FOR_A_CLASS,
    book: uphill,
  },
  {
    file: 'class-ladle.pourbook.json',
    summary: 'Fill height and first flow: what a short ladle does.',
    group: FOR_A_CLASS,
    book: ladle,
  },
  {
    file: 'class-past-level.pourbook.json',
    summary: 'The same seconds spent three ways: slow past level, quick afterwards.',
    group: FOR_A_CLASS,
    book: pastLevel,
  },
  {
    file: 'class-sill.pourbook.json',
    summary: 'Why a sill makes a jet, with the sum of the fall.',
    group: FOR_A_CLASS,
    book: sillJet,
  },
  {
    file: 'class-window.pourbook.json',
    summary: 'Three pours of a thin wall, then the map they lie on.',
    group: FOR_A_CLASS,
    book: readWindow,
  },
];
