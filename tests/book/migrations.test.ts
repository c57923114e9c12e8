import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BOOK_VERSION, migrate, STEPS, type Step } from '$src/book/migrations';
import { readBook } from '$src/book/readBook';

/** One saved file of each version there ever was, `v1.pourbook.json` and so on; never edited once it is here. */
const OLD = new URL('./old/', import.meta.url);
const oldFiles = readdirSync(OLD).filter((name) => name.endsWith('.pourbook.json'));
const textOf = (name: string): string => readFileSync(new URL(name, OLD), 'utf8');

describe('saved books of every version', () => {
  it('has a file of each version, so that every step is exercised', () => {
    const versions = oldFiles.map((name) => JSON.parse(textOf(name)).version).sort((a, b) => a - b);
    expect([...new Set(versions)]).toEqual(Array.from({ length: BOOK_VERSION }, (_, index) => index + 1));
  });

  it.each(oldFiles)('%s opens', (name) => {
    const read = readBook(textOf(name));
    expect('issues' in read ? read.issues : []).toEqual([]);
  });

  it('has numbered steps from 2 up to the present version, each with its reason', () => {
    expect(STEPS.map((step) => step.to)).toEqual(
      Array.from({ length: BOOK_VERSION - 1 }, (_, index) => index + 2),
    );
    for (const step of STEPS) expect(step.why.length).toBeGreaterThan(10);
  });
});

describe('migrate', () => {
  const steps: readonly Step[] = [
    { to: 2, why: 'a trial step that adds a mark', up: (book) => ({ ...(book as object), two: true }) },
    {
      to: 3,
      why: 'a trial step that counts',
      up: (book) => ({ ...(book as object), fields: Object.keys(book as object).length }),
    },
  ];

  it('goes through every step in order', () => {
    const migrated = migrate({ format: 'pourbook', version: 1, book: { one: true } }, steps, 3);
    expect(migrated).toEqual({ format: 'pourbook', version: 3, book: { one: true, two: true, fields: 2 } });
  });

  it('starts where the file stands and leaves a present one alone', () => {
    const file = { format: 'pourbook', version: 3, book: {} };
    expect(migrate({ ...file, version: 2 }, steps, 3).book).toEqual({ fields: 0 });
    expect(migrate(file, steps, 3)).toBe(file);
  });

  it('throws when a step is missing', () => {
    expect(() => migrate({ format: 'pourbook', version: 1, book: {} }, steps.slice(1), 3)).toThrow(
      'version 2',
    );
  });
});
