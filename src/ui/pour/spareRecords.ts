import type { RecordNote } from '../cupboard';

/** All kept records together; a pour on a usual mesh takes about a megabyte. */
export const BYTES_KEPT = 96e6;

/** Keys of notes that have to go: those of another version, then the ones longest unused until the rest has room. */
export function spareRecords(
  notes: ReadonlyMap<string, RecordNote>,
  version: string,
  most: number = BYTES_KEPT,
): string[] {
  const own = [...notes].filter(([key]) => key.startsWith(`${version} `));
  const foreign = [...notes.keys()].filter((key) => !key.startsWith(`${version} `));
  let room = most;
  const over = own
    .toSorted(([, a], [, b]) => b.at - a.at)
    .filter(([, { bytes }]) => {
      room -= bytes;
      return room < 0;
    });
  return [...foreign, ...over.map(([key]) => key)];
}
