import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020';
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { BOOK_VERSION } from '$src/book/migrations';
import { BOOK_FORMAT } from '$src/book/readBook';
import { bookSchema, stage, stageForms } from '$src/book/schema';
import { bookJsonSchema } from '$src/setup/bookJsonSchema.js';

const PROJECT = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, PROJECT), 'utf8');

const kept = JSON.parse(read('docs/book.schema.json'));
const accepts = new Ajv2020({ strict: true, strictTypes: false, strictTuples: false }).compile(kept);
const books = readdirSync(new URL('static/', PROJECT)).filter((file) => file.endsWith('.pourbook.json'));
const parsed = (file: string) => JSON.parse(read(`static/${file}`));

describe('the JSON Schema of a book', () => {
  it('is the one that follows from the checks; else run: node src/setup/bookSchema.js', () => {
    const form = { format: BOOK_FORMAT, version: BOOK_VERSION, book: bookSchema, stage, stageForms };
    expect(kept).toEqual(JSON.parse(JSON.stringify(bookJsonSchema(form))));
  });

  it.each(books)('accepts %s', (file) => {
    accepts(parsed(file));
    expect(accepts.errors).toBeNull();
  });

  it.each([
    ['another format', { ...parsed(books[0]!), format: 'sheet' }],
    ['a newer version', { ...parsed(books[0]!), version: BOOK_VERSION + 1 }],
    ['a stray field', { ...parsed(books[0]!), colour: 1 }],
    ['no book', { format: BOOK_FORMAT, version: BOOK_VERSION }],
  ])('refuses %s', (_, file) => expect(accepts(file)).toBe(false));

  it('says of a changed book what the program says of its shape', () => {
    const answers = { accepted: 0, refused: 0 };
    const change = fc.record({ book: fc.nat(books.length - 1), place: fc.nat(), value: fc.jsonValue() });
    fc.assert(
      fc.property(change, ({ book, place, value }) => {
        const file = parsed(books[book]!);
        const places = placesIn(file.book);
        const { holder, key } = places[place % places.length]!;
        holder[key] = value;
        const isGood = v.safeParse(bookSchema, file.book).success;
        answers[isGood ? 'accepted' : 'refused']++;
        expect(accepts(file), JSON.stringify({ key, value })).toBe(isGood);
      }),
      { numRuns: 400, seed: 20266 },
    );
    expect(Math.min(answers.accepted, answers.refused)).toBeGreaterThan(10);
  });
});

interface Place {
  readonly holder: Record<string, unknown>;
  readonly key: string;
}

function placesIn(value: unknown): Place[] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Record<string, unknown>;
  return Object.keys(holder).flatMap((key) => [{ holder, key }, ...placesIn(holder[key])]);
}
