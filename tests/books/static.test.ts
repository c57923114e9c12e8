import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bookIssues } from '$src/book/bookIssues';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { SHELF } from './sources/shelf';

/**
 * The example books are written from tests/books/sources, where lengths are in millimetres and angles in degrees:
 *   WRITE_BOOKS=1 npx vitest run tests/books/static.test.ts
 */
const STATIC = new URL('../../static/', import.meta.url);
const shelfText = `${JSON.stringify(
  SHELF.map(({ file, book, summary, group }) => ({ file, title: book.title, summary, group })),
  null,
  2,
)}\n`;

if (process.env['WRITE_BOOKS']) {
  for (const { file, book } of SHELF) writeFileSync(new URL(file, STATIC), writeBook(book));
  writeFileSync(new URL('books.json', STATIC), shelfText);
}

const text = (file: string): string => readFileSync(new URL(file, STATIC), 'utf8');

describe('example books', () => {
  it('are all on the shelf, and nothing else is', () => {
    const files = readdirSync(STATIC).filter((file) => file.endsWith('.pourbook.json'));
    expect(files.sort()).toEqual(SHELF.map(({ file }) => file).sort());
    expect(text('books.json')).toBe(shelfText);
  });

  it.each(SHELF)('$file is what its source says', ({ file, book }) => {
    expect(text(file)).toBe(writeBook(book));
  });

  it.each(SHELF)('$file opens, and everything in it is in order', ({ file }) => {
    const read = readBook(text(file));
    if ('issues' in read) throw new Error(JSON.stringify(read.issues));
    expect(bookIssues(read.book)).toEqual([]);
  });

  it.each(SHELF)('$file opens with a note and has cautions', ({ book }) => {
    expect(book.cells[0]?.kind).toBe('note');
    expect(book.cells.some((cell) => cell.kind === 'note' && cell.text.includes('Local codes'))).toBe(true);
  });
});
