/** The version this program writes, and the newest it reads. */
export const BOOK_VERSION = 1;

/** What a file holds, before it is known to be a book. */
export interface BookFile {
  readonly format: unknown;
  readonly version: number;
  readonly book: unknown;
}

/** One change of the file's form. */
export interface Step {
  /** The version it leads to; it starts from the one before. */
  readonly to: number;
  /** Why the form changed, for the history in docs/book-file.md. */
  readonly why: string;
  /** Changes what the version before wrote; may trust it no further than the version before did. */
  readonly up: (book: unknown) => unknown;
}

/**
 * Every step ever made, the oldest first; a step is never changed once a version with it is out. With a new step come
 * a new BOOK_VERSION and a file of the version before in tests/book/old.
 */
export const STEPS: readonly Step[] = [];

/** The file in the present form. Throws when the steps have a gap, which would be our own mistake. */
export function migrate(
  file: BookFile,
  steps: readonly Step[] = STEPS,
  version: number = BOOK_VERSION,
): BookFile {
  let migrated = file;
  while (migrated.version < version) {
    const to = migrated.version + 1;
    const step = steps.find((one) => one.to === to);
    if (!step) throw new Error(`No step leads to version ${to} of the book file.`);
    migrated = { ...migrated, version: to, book: step.up(migrated.book) };
  }
  return migrated;
}
