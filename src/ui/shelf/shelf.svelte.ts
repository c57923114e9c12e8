import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { allBooks, bookOf, dropBook, putBook } from '../storage';
import { whileUnopened } from './bookHold';
import { type BookCover, coverOf, type KeptBook } from './keptBook';

/** A kept book in the list. */
export interface ShelfEntry {
  readonly id: string;
  readonly savedAt: Date;
  /** null when its text cannot be read by this program, e.g. because a newer one saved it. */
  readonly cover: BookCover | null;
}

/** The books kept on this machine. Every method rejects when the browser refuses. */
class Shelf {
  entries: readonly ShelfEntry[] = $state.raw([]);
  /** Taken off last; comes back by `bringBack`. */
  taken: { readonly id: string; readonly title: string; readonly book: KeptBook } | null = $state.raw(null);

  /** The newest first. `openId` is listed even before it has been changed. */
  async refresh(openId: string): Promise<void> {
    const books = [...(await allBooks())].filter(([id, { isOwn }]) => isOwn || id === openId);
    this.entries = books
      .map(([id, { text, savedAt }]) => ({ id, savedAt, cover: coverIn(text) }))
      .sort((a, b) => b.savedAt.getTime() - a.savedAt.getTime());
  }

  /** False, with nothing done, while the book lies open in another tab. */
  rename(id: string, title: string): Promise<boolean> {
    return whileUnopened(id, async () => {
      const kept = await bookOf(id);
      const result = kept && readBook(kept.text);
      if (!kept || !result || !('book' in result)) return;
      await putBook(id, { ...kept, isOwn: true, text: writeBook({ ...result.book, title }) });
    });
  }

  /** False, with nothing done, while the book lies open in another tab. */
  takeOff(id: string): Promise<boolean> {
    return whileUnopened(id, async () => {
      const book = await bookOf(id);
      if (!book) return;
      const title = coverIn(book.text)?.title ?? 'A book';
      await dropBook(id);
      this.taken = { id, title, book };
    });
  }

  async bringBack(): Promise<void> {
    if (!this.taken) return;
    await putBook(this.taken.id, this.taken.book);
    this.taken = null;
  }
}

function coverIn(text: string): BookCover | null {
  const result = readBook(text);
  return 'book' in result ? coverOf(result.book) : null;
}

export const shelf = new Shelf();
