import type { IDBPDatabase } from 'idb';
import type { PointResult } from '$src/report/study/region';
import { type Cupboard, openCupboard } from './cupboard';
import { dropRecords } from './pour/keptRecords';
import type { KeptBook } from './shelf/keptBook';

/** Study points are some hundred bytes each. */
const POINTS_KEPT = 20_000;
/** The oldest go in lots, so that not every point has to look for one. */
const LOT = 500;

/** Keeps a book in this browser. Rejects when the browser refuses or has no room; what was kept before then stays. */
export async function putBook(id: string, book: KeptBook): Promise<void> {
  try {
    await tryToPut(id, book);
  } catch (error) {
    // Records of pours can be computed again: they make room for a book.
    const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
    if (!isFull) throw error;
    await dropRecords();
    await tryToPut(id, book);
  }
}

async function tryToPut(id: string, book: KeptBook): Promise<void> {
  const transaction = (await openCupboard()).transaction('books', 'readwrite', { durability: 'strict' });
  const put = transaction.store.put(book, id);
  // Committed at once and not once the put is answered: a page that is left gets no more answers.
  transaction.commit();
  await Promise.all([put, transaction.done]);
}

export async function bookOf(id: string): Promise<KeptBook | null> {
  return (await (await openCupboard()).get('books', id)) ?? null;
}

/** Every book kept, by id. */
export async function allBooks(): Promise<ReadonlyMap<string, KeptBook>> {
  const store = (await openCupboard()).transaction('books').store;
  const [ids, books] = await Promise.all([store.getAllKeys(), store.getAll()]);
  return new Map(ids.map((id, index) => [id, books[index]!]));
}

export async function dropBook(id: string): Promise<void> {
  await (await openCupboard()).delete('books', id);
}

/** Figures of a study point; null when unknown, or when the browser keeps nothing. Never rejects. */
export async function pointOf(planHash: string): Promise<PointResult | null> {
  try {
    return (await (await openCupboard()).get('points', planHash))?.result ?? null;
  } catch {
    return null;
  }
}

/** Keeps the figures of a study point; the oldest give way. Never rejects: a point that is not kept is computed again. */
export async function putPoint(planHash: string, result: PointResult): Promise<void> {
  try {
    const database = await openCupboard();
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
