import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { PointResult } from '$src/report/study/region';
import type { KeptBook } from './shelf/keptBook';

interface Cupboard extends DBSchema {
  books: { key: string; value: KeptBook };
  /** Figures of study points by plan hash. */
  points: {
    key: string;
    value: { readonly result: PointResult; readonly at: number };
    indexes: { at: number };
  };
}

/** Study points are some hundred bytes each. */
const POINTS_KEPT = 20_000;
/** The oldest go in lots, so that not every point has to look for one. */
const LOT = 500;

let cupboard: Promise<IDBPDatabase<Cupboard>> | null = null;

function open(): Promise<IDBPDatabase<Cupboard>> {
  cupboard ??= openDB<Cupboard>('quietpour', 2, {
    async upgrade(database, before, _, transaction) {
      if (before < 1) database.createObjectStore('books');
      if (before < 2) database.createObjectStore('points').createIndex('at', 'at');
      if (before === 1) await renewLast(transaction.objectStore('books'));
    },
    // Another tab with a newer program waits for this one to let go of the store.
    blocking: () => void cupboard?.then((database) => database.close()).then(() => (cupboard = null)),
  });
  cupboard.catch(() => {
    cupboard = null;
  });
  return cupboard;
}

interface OldStore {
  get(key: string): Promise<KeptBook | undefined>;
  put(book: KeptBook, key: string): Promise<string>;
  delete(key: string): Promise<void>;
}

/** The one book that was kept before there were several. */
async function renewLast(store: OldStore): Promise<void> {
  const last = await store.get('last');
  if (!last) return;
  await store.put({ ...last, isOwn: true }, 'first');
  await store.delete('last');
}

/** Keeps a book in this browser. Rejects when the browser refuses or has no room; what was kept before then stays. */
export async function putBook(id: string, book: KeptBook): Promise<void> {
  const transaction = (await open()).transaction('books', 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put(book, id), transaction.done]);
}

export async function bookOf(id: string): Promise<KeptBook | null> {
  return (await (await open()).get('books', id)) ?? null;
}

/** Every book kept, by id. */
export async function allBooks(): Promise<ReadonlyMap<string, KeptBook>> {
  const store = (await open()).transaction('books').store;
  const [ids, books] = await Promise.all([store.getAllKeys(), store.getAll()]);
  return new Map(ids.map((id, index) => [id, books[index]!]));
}

export async function dropBook(id: string): Promise<void> {
  await (await open()).delete('books', id);
}

/** Figures of a study point; null when unknown, or when the browser keeps nothing. Never rejects. */
export async function pointOf(planHash: string): Promise<PointResult | null> {
  try {
    return (await (await open()).get('points', planHash))?.result ?? null;
  } catch {
    return null;
  }
}

/** Keeps the figures of a study point; the oldest give way. Never rejects: a point that is not kept is computed again. */
export async function putPoint(planHash: string, result: PointResult): Promise<void> {
  try {
    const database = await open();
    await database.put('points', { result, at: Date.now() }, planHash);
    if ((await database.count('points')) > POINTS_KEPT + LOT) await dropOldest(database);
  } catch {
    // A full or refused store costs time at the next visit, and nothing else.
  }
}

async function dropOldest(database: IDBPDatabase<Cupboard>): Promise<void> {
  const transaction = database.transaction('points', 'readwrite');
  let cursor = await transaction.store.index('at').openCursor();
  for (let left = LOT; cursor && left > 0; left--) {
    await cursor.delete();
    cursor = await cursor.continue();
  }
  await transaction.done;
}
