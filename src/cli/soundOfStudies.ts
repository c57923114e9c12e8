import type { Book } from '$src/cells/kinds';
import { speaksOf } from '$src/report/study/alsoCovered';
import type { SoundFinding } from '$src/report/study/soundFinding';
import { type StudyOfBook, soundOfPour } from '$src/report/study/soundOfPour';
import type { ChosenCard } from './chooseCard';
import { type ChosenStudy, readyStudy } from './chooseStudy';
import { ownStudy, wholeStudy } from './pouredStudy';
import { openPool } from './pourPool';

/** A study that was poured for a card, and how many pours that took. */
export interface LookedAt {
  readonly name: string;
  readonly pours: number;
}

export interface SoundOfStudies {
  readonly studies: readonly LookedAt[];
  readonly sound: SoundFinding;
}

/** A study of the book that has something to say of the pour of a card. */
interface Asked {
  readonly isOwn: boolean;
  /** Null while it is not in order. */
  readonly study: ChosenStudy | null;
}

/** How far the settings of a card's pour may stray, by the studies of the book: those that the page goes by, poured as it pours them. */
export async function soundOfStudies(book: Book, card: ChosenCard): Promise<SoundOfStudies> {
  const looked: LookedAt[] = [];
  const known: StudyOfBook[] = [];
  const asked = askedOf(book, card);
  const pool = asked.some(({ study }) => study !== null) ? openPool() : null;
  try {
    for (const { isOwn, study } of asked) {
      if (!study) {
        known.push({ isOwn, known: null, isOld: false });
        continue;
      }
      const before = pool!.poured();
      const found = await (isOwn ? ownStudy : wholeStudy)(study, pool!);
      known.push({ isOwn, known: found, isOld: false });
      looked.push({ name: study.head.cell, pours: pool!.poured() - before });
    }
  } finally {
    await pool?.close();
  }
  return { studies: looked.filter(({ pours }) => pours > 0), sound: soundOfPour(card.plan, known) };
}

/** The studies of the pour; where it has none, those that speak of it all the same. */
function askedOf(book: Book, { pour, plan }: ChosenCard): Asked[] {
  const cells = book.cells.filter((cell) => cell.kind === 'study');
  const own = cells.filter((cell) => cell.pour === pour.id);
  if (own.length > 0) return own.map((cell) => ({ isOwn: true, study: readyStudy(book, cell) }));
  return cells.flatMap((cell) => {
    const study = readyStudy(book, cell);
    return study && speaksOf({ plan: study.plan, axes: study.head.axes }, plan)
      ? [{ isOwn: false, study }]
      : [];
  });
}
