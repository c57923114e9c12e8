import type { Book, Cell, CellId } from '$src/cells/kinds';
import { DEFAULT_COMPUTATION, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import type { GuessAsk } from '$src/report/guess/ask';
import type { TeachersAnswers } from '$src/report/guess/teachersAnswers';
import { CASTING, type CellOf, cautions, metalCell, note, pourCell } from '../shop';

/** What the books for a class share. */

/** The weight that fills the hinge arm and leaves a feeder [kg]. */
export const WEIGHT = { by: 'mass', mass: 0.696 } as const;
/** The basin that holds it at the brink, 30° uphill; the pit behind a sill that holds about as much, level. */
export const FLUSH = { length: 115, pit: 0, open: 50 } as const;
export const PIT = { length: 151, pit: 25, open: 80 } as const;

/** A guess that keeps the pours it is about hidden; its question cannot be changed by accident. */
export const guessCell = (
  id: CellId,
  name: string,
  ask: GuessAsk,
  pours: readonly CellId[],
  question: string,
): CellOf<'guess'> => ({
  id,
  name,
  folded: false,
  locked: true,
  kind: 'guess',
  pours,
  question,
  ask,
  drawn: [],
  picked: null,
  given: false,
  hides: true,
});

/** A guess whose answers a teacher wrote; it is about no pour, so that nothing waits for it but the notes tied to it. */
export const ownGuessCell = (id: CellId, name: string, question: string, own: TeachersAnswers): Cell => ({
  ...guessCell(id, name, 'own answers', [], question),
  own,
});

/** A note that is shown once a guess is given; with the guess it is locked. */
export const afterGuess = (guess: CellId, cell: CellOf<'note'>): Cell => ({
  ...cell,
  after: guess,
  locked: true,
});

/** A pour on the coarse mesh, so that it is there as soon as a class has guessed. */
export const classPour = (...taken: Parameters<typeof pourCell>): Cell => ({
  ...pourCell(...taken),
  computation: { ...DEFAULT_COMPUTATION, meshCells: PREVIEW_MESH_CELLS },
});

/** What is set once and seldom looked at is folded away, so that the lesson reads as one page. */
export const tucked = (cell: Cell): Cell => ({ ...cell, folded: true });

export function lesson(title: string, cells: readonly Cell[]): Book {
  return { title, casting: CASTING, cells: [...cells, cautions('cautions')] };
}

export const aims = (minutes: string, lines: readonly string[]): Cell =>
  note('aims', 'What this is about', [
    ...lines,
    `*About ${minutes} minutes. Every pour here is invented, and computed on a coarse mesh so that nobody waits; your guesses are kept in the book.*`,
    '*The lessons are about the front. Their basins are small: where a pour says that its feeder is short, the casting would draw or shrink inside, however quietly it fills. Basins that feed, too, are in the examples* Level start against uphill start *and* Too slow is cold.',
  ]);

export const metal = (): Cell => tucked(metalCell());
