import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

interface Shelf extends DBSchema {
  books: { key: string; value: { readonly text: string; readonly savedAt: Date } };
}

const LAST = 'last';

let shelf: Promise<IDBPDatabase<Shelf>> | null = null;

function openShelf(): Promise<IDBPDatabase<Shelf>> {
  shelf ??= openDB<Shelf>('quietpour', 1, {
    upgrade: (database) => void database.createObjectStore('books'),
  });
  return shelf;
}

/** Keeps the text of a book file in this browser. Rejects when the browser refuses or has no room. */
export async function keepBook(text: string): Promise<Date> {
  const savedAt = new Date();
  await (await openShelf()).put('books', { text, savedAt }, LAST);
  return savedAt;
}

/** The text of the book kept last; null when there is none. Rejects when the browser refuses. */
export async function keptBook(): Promise<{ readonly text: string; readonly savedAt: Date } | null> {
  return (await (await openShelf()).get('books', LAST)) ?? null;
}
