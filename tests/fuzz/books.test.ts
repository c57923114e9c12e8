import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookIssues } from '$src/book/bookIssues';
import { readClip, writeClip } from '$src/book/clipText';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { clipOf, pasteClip } from '$src/cells/clip';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import { cut, cutText, mutate, mutation, place } from './mutations';
import { expectNothingShared, expectReadable, promptly } from './readable';

const STATIC = new URL('../../static/', import.meta.url);
const TEXTS = readdirSync(STATIC)
  .filter((file) => file.endsWith('.pourbook.json'))
  .map((file) => readFileSync(new URL(file, STATIC), 'utf8'));

const text = fc.constantFrom(...TEXTS);
const changes = fc.array(mutation, { minLength: 1, maxLength: 4 });
const RUNS = Number(process.env['QUIETPOUR_FUZZ'] ?? 1);
const settings = (numRuns: number) => ({ numRuns: numRuns * RUNS, seed: RUNS > 1 ? Date.now() : 20267 });

/** Reads it; an accepted book is evaluated whole and can be written again, a refused one says why. */
function readWhole(file: string): Book | null {
  const read = promptly(() => readBook(file));
  if ('issues' in read) {
    expectReadable(read.issues);
    return null;
  }
  const evaluations = promptly(() => evaluateBook(read.book));
  expect(evaluations.size).toBe(read.book.cells.length);
  const wrong = bookIssues(read.book);
  if (wrong.length > 0) expectReadable(wrong);
  for (const evaluation of evaluations.values()) {
    if (evaluation.state === 'blocked') expect(evaluation.reason).not.toMatch(/undefined|NaN|\[object/);
  }
  return read.book;
}

/** Accepted books are told apart from refused ones by count, so that neither half of the test runs dry. */
const tally = { accepted: 0, refused: 0 };

describe('thousands of broken books', () => {
  it('broken in what they hold: a book or readable issues', () => {
    fc.assert(
      fc.property(text, changes, (whole, list) => {
        const file = JSON.parse(whole);
        for (const change of list) mutate(file, change);
        const book = readWhole(JSON.stringify(file));
        if (book === null) tally.refused += 1;
        else {
          tally.accepted += 1;
          expect(readBook(writeBook(book))).toEqual({ book });
        }
      }),
      settings(400),
    );
    expect(tally.accepted).toBeGreaterThan(30);
    expect(tally.refused).toBeGreaterThan(30);
    expectNothingShared();
  });

  it('numbers alone changed: the book opens and all of it is evaluated', () => {
    const number = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom(0, -0, -1, 1, 1e-12, 1e9, 1.7e308, -1.7e308, 5e-324, 2 ** 53),
    );
    fc.assert(
      fc.property(text, fc.array(fc.tuple(place, number), { minLength: 1, maxLength: 6 }), (whole, list) => {
        const file = JSON.parse(whole);
        const places = numberPlaces(file.book);
        for (const [at, value] of list) {
          const { holder, key } = places[at % places.length]!;
          holder[key] = value;
        }
        readWhole(JSON.stringify(file));
      }),
      settings(200),
    );
  });

  it('cut and filled as text', () => {
    fc.assert(
      fc.property(text, fc.array(cut, { minLength: 1, maxLength: 3 }), (whole, cuts) => {
        readWhole(cuts.reduce(cutText, whole));
      }),
      settings(900),
    );
    expectNothingShared();
  });
});

interface NumberPlace {
  readonly holder: Record<string, unknown>;
  readonly key: string;
}

function numberPlaces(value: unknown): NumberPlace[] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Record<string, unknown>;
  return Object.keys(holder).flatMap((key) =>
    typeof holder[key] === 'number' ? [{ holder, key }] : numberPlaces(holder[key]),
  );
}

describe('pasted cells', () => {
  const home = readBook(TEXTS[0]!) as { book: Book };
  const clips = TEXTS.slice(0, 6).map((whole) => {
    const { book } = readBook(whole) as { book: Book };
    return writeClip(clipOf(book, [book.cells.at(-1)!.id]));
  });

  it('broken in any way: pasted whole or refused in words, and the book they go to stays sound', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...clips),
        fc.array(mutation, { maxLength: 3 }),
        fc.array(cut, { maxLength: 1 }),
        (clip, list, cuts) => {
          const value = JSON.parse(clip);
          for (const change of list) mutate(value, change);
          const read = promptly(() => readClip(cuts.reduce(cutText, JSON.stringify(value))));
          if ('issues' in read) return expectReadable(read.issues);
          const { book } = promptly(() => pasteClip(home.book, read.clip, null));
          const ids = new Set(book.cells.map(({ id }) => id));
          expect(ids.size).toBe(book.cells.length);
          evaluateBook(book);
        },
      ),
      settings(400),
    );
    expectNothingShared();
  });
});
