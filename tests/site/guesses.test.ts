import { expect, test } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { addCell } from '$src/cells/edit';
import type { Book, GuessCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { sampleBook } from '../book/sample';
import { useOnePage } from './helpers/onePage';
import { picture } from './helpers/picture';
import { seriousBarriers } from './helpers/seriousBarriers';

const openBook = useOnePage();
const PATIENCE = { timeout: 60_000 };

/** A book with these guesses in front, its pours soon done. */
function asking(guesses: readonly Partial<GuessCell>[]): Book {
  const book = sampleBook();
  const computation = { meshCells: 40, capillaryGate: true, settlingTime: 1 };
  const cells = book.cells.map((cell) => (cell.kind === 'pour' ? { ...cell, computation } : cell));
  const made = guesses.map((part) => ({ ...(newCell('guess', book) as GuessCell), ...part }));
  return made.reduceRight<Book>((full, guess) => addCell(full, guess, 0), { ...book, cells });
}

test('an answer that would give another guess away waits until that one is given too', PATIENCE, async () => {
  const page = await openBook(
    writeBook(
      asking([
        { id: 'call', name: 'Under or over', ask: 'speed call', pours: ['pour-1'] },
        { id: 'fastest', name: 'Which is fastest', ask: 'quickest', pours: ['pour-1', 'pour-2'] },
      ]),
    ),
  );
  const [call, fastest, pour] = [page.locator('#call'), page.locator('#fastest'), page.locator('#pour-1')];
  await expect.poll(() => pour.getAttribute('data-state'), PATIENCE).toBe('fresh');
  await call.getByRole('radio', { name: 'stays under critical speed' }).check();
  await call.getByRole('button', { name: 'Give the guess and see the result' }).click();
  await call.getByText('Its answer would give away another.').waitFor();
  expect(await call.getByRole('link', { name: 'Which is fastest' }).count()).toBe(1);
  expect(await call.textContent()).not.toMatch(/m\/s|computed\./i);
  expect(await pour.textContent()).toContain('The result is hidden.');
  await picture(page, 'guess-waits');
  expect(await seriousBarriers(page)).toEqual([]);

  await fastest.getByRole('radio', { name: 'the fastest two are alike' }).check();
  await fastest.getByRole('button', { name: 'Give the guess and see the result' }).click();
  await expect.poll(() => call.textContent(), PATIENCE).toMatch(/s computed\..*The front reaches .* m\/s/s);
  await expect.poll(() => fastest.textContent(), PATIENCE).toContain('As computed.');
  await expect.poll(() => pour.locator('[data-verdict]').count(), PATIENCE).toBe(1);
});
