import { allBooks, bookOf } from '../storage';
import { lastOpen } from './bookHold';
import type { KeptBook } from './keptBook';

/** Where the book lies that was kept before there were several. */
const FIRST_KEPT = 'first';

/** The book that was open last; when it is gone, the one kept last. */
export async function lastKept(): Promise<[id: string, book: KeptBook | null]> {
  const id = lastOpen() ?? FIRST_KEPT;
  const book = await bookOf(id);
  if (book) return [id, book];
  const newest = [...(await allBooks())].sort(([, a], [, b]) => b.savedAt.getTime() - a.savedAt.getTime());
  return newest[0] ?? [id, null];
}
