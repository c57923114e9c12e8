import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { PourRecord } from '$src/core/pour/record';
import type { PointResult } from '$src/report/study/region';
import type { KeptBook } from './shelf/keptBook';

/** What is known of a kept record without fetching it. */
export interface RecordNote {
  /** When it was used last [ms since 1970]. */
  readonly at: number;
  readonly bytes: number;
}

/** All that lies in this browser. Points and records can be computed again; books cannot. */
export interface Cupboard extends DBSchema {
  books: { key: string; value: KeptBook };
  /** Figures of study points by version and plan hash. */
  points: {
    key: string;
    value: { readonly result: PointResult; readonly at: number };
    indexes: { at: number };
  };
  /** Finished pours by version and plan hash, and a note of each. */
  records: { key: string; value: PourRecord };
  recordNotes: { key: string; value: RecordNote };
}

let cupboard: Promise<IDBPDatabase<Cupboard>> | null = null;

/** Opens the browser's store, once. Rejects when the browser refuses; the next call tries again. */
export function openCupboard(): Promise<IDBPDatabase<Cupboard>> {
  cupboard ??= openDB<Cupboard>('quietpour', 3, {
    async upgrade(database, before, _, transaction) {
      if (before < 1) database.createObjectStore('books');
      if (before < 2) database.createObjectStore('points').createIndex('at', 'at');
      if (before < 3) {
        database.createObjectStore('records');
        database.createObjectStore('recordNotes');
      }
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
