import { describe, expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import { guessHiding } from '$src/cells/guessHides';
import type { Book, Cell, GuessCell } from '$src/cells/kinds';
import { PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { toDegrees } from '$src/core/units';
import { type Answer, answerOf } from '$src/report/guess/choices';
import { computed } from '../computed';
import { planOf } from '../planOf';

/** What the notes of a book for a class claim, and what its guesses come to, on the mesh the class sees. */

export const recordOf = (book: Book, pour: string): PourRecord => computed(planOf(book, pour));

const isGuess = (cell: Cell): cell is GuessCell => cell.kind === 'guess';

export function answer(book: Book, guessId: string): Answer | null {
  const guess = book.cells.filter(isGuess).find(({ id }) => id === guessId)!;
  const pours = guess.pours.map((id) => ({ id, name: id }));
  return answerOf(
    guess.ask,
    pours,
    guess.pours.map((id) => recordOf(book, id)),
    guess.own,
  );
}

/** Inclination at first flow [°]. */
export const firstFlow = ({ figures }: PourRecord): number => {
  if (figures.firstFlow.kind !== 'angle') throw new Error(`First flow is ${figures.firstFlow.kind}.`);
  return toDegrees(figures.firstFlow.inclination);
};
export const peak = ({ figures }: PourRecord): number => figures.peakFrontSpeed!;
export const critical = ({ plan }: PourRecord): number => plan.liquid.criticalSpeed;

/** What holds of every book for a class. */
export function asksBeforeItShows(book: Book): void {
  describe(`“${book.title}”, a book for a class`, () => {
    it('is computed on the coarse mesh, and asks before it shows', () => {
      const pours = book.cells.filter((cell) => cell.kind === 'pour');
      expect(pours.length).toBeGreaterThanOrEqual(2);
      for (const pour of pours) {
        expect(pour.computation.meshCells).toBe(PREVIEW_MESH_CELLS);
        expect(guessHiding(book, pour), `${pour.name} is shown at once`).not.toBeNull();
      }
    });

    it.each(book.cells.filter(isGuess))('$id has a locked question with an answer', (guess) => {
      expect(guess.locked).toBe(true);
      expect(evaluateBook(book).get(guess.id)?.state).toBe('ready');
      for (const id of guess.pours) expect(recordOf(book, id).figures.peakFrontSpeed).not.toBeNull();
      if (guess.ask !== 'front speed') expect(answer(book, guess.id)).not.toBeNull();
    });
  });
}
