/**
 * Something wrong with what the user gave: where, what, and what to do about it.
 * Issues are returned, never thrown; exceptions are for our own mistakes.
 */
export interface Issue {
  /** Path of the field, e.g. `roof.4.y`, as used in the book file. */
  readonly path: string;
  /** What is wrong, one sentence. */
  readonly message: string;
  /** What to do, one sentence. */
  readonly remedy: string;
  /** What is not there yet, where nothing is wrong but that: a kind of cell, or what a cell is to be told. */
  readonly lacking?: string;
  /** Where on the section, when it has a place [m]. */
  readonly at?: { readonly x: number; readonly y: number };
}
