import type { PourRecord } from '$src/core/pour/record';
import { type Cupboard, openCupboard, type RecordNote } from '../cupboard';
import { spareRecords } from './spareRecords';

/** A finished pour kept from before; null when unknown, or when the browser keeps nothing. Never rejects. */
export async function recordOf(version: string, planHash: string): Promise<PourRecord | null> {
  const key = `${version} ${planHash}`;
  try {
    const database = await openCupboard();
    const record = await database.get('records', key);
    if (!record) return null;
    void touch(key).catch(() => undefined);
    return record;
  } catch {
    return null;
  }
}

/** Keeps a finished pour; the ones longest unused give way. Never rejects: a pour that is not kept is computed again. */
export async function putRecord(version: string, planHash: string, record: PourRecord): Promise<void> {
  const key = `${version} ${planHash}`;
  try {
    const database = await openCupboard();
    const transaction = database.transaction(['records', 'recordNotes'], 'readwrite');
    const notes = transaction.objectStore('recordNotes');
    const known = await allNotes(notes);
    const note = { at: Date.now(), bytes: bytesOf(record) };
    const spare = spareRecords(known.set(key, note), version);
    await Promise.all([
      ...spare.flatMap((old) => [transaction.objectStore('records').delete(old), notes.delete(old)]),
      ...(spare.includes(key)
        ? []
        : [transaction.objectStore('records').put(record, key), notes.put(note, key)]),
      transaction.done,
    ]);
  } catch {
    // A full or refused store costs time at the next visit, and nothing else.
  }
}

/** Makes room for what cannot be computed again. */
export async function dropRecords(): Promise<void> {
  const transaction = (await openCupboard()).transaction(['records', 'recordNotes'], 'readwrite');
  await Promise.all([
    transaction.objectStore('records').clear(),
    transaction.objectStore('recordNotes').clear(),
    transaction.done,
  ]);
}

async function touch(key: string): Promise<void> {
  const database = await openCupboard();
  const note = await database.get('recordNotes', key);
  if (note) await database.put('recordNotes', { ...note, at: Date.now() }, key);
}

interface Notes {
  getAllKeys(): Promise<string[]>;
  getAll(): Promise<Cupboard['recordNotes']['value'][]>;
}

async function allNotes(store: Notes): Promise<Map<string, RecordNote>> {
  const [keys, notes] = await Promise.all([store.getAllKeys(), store.getAll()]);
  return new Map(keys.map((key, index) => [key, notes[index]!]));
}

/** Nearly all of a record lies in its arrays of numbers [bytes]. */
function bytesOf(value: unknown): number {
  if (ArrayBuffer.isView(value)) return value.byteLength;
  if (typeof value !== 'object' || value === null) return 8;
  return Object.values(value).reduce((sum: number, part) => sum + bytesOf(part), 0);
}
