import { writeBook } from '$src/book/writeBook';
import type { Book } from '$src/cells/kinds';
import { type History, settle } from './history';

/** Of so many books what was done can be taken back when they are opened again. */
const KEPT = 8;

/** What can be taken back in the books left last on this visit, by their ids. */
const pasts = new Map<string, History<Book>>();

/** Call when that book is left. */
export function keepPast(id: string, history: History<Book>): void {
  // Put in anew, so that those longest left go first.
  pasts.delete(id);
  pasts.set(id, settle(history));
  for (const old of [...pasts.keys()].slice(0, -KEPT)) pasts.delete(old);
}

/** Another tab, or a new title given in the list, may have made another book of it: nothing can be taken back there. */
export function pastOf(id: string, text: string): History<Book> | undefined {
  const past = pasts.get(id);
  return past && writeBook(past.now) === text ? past : undefined;
}
