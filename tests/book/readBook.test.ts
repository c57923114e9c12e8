import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LARGEST_FILE, readBook, unreadable } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import type { Book } from '$src/cells/kinds';
import type { Issue } from '$src/core/issue';
import { bookPage } from '$src/report/bookPage/bookPage';
import { sampleBook } from './sample';

const book = sampleBook();

/** The sample as parsed JSON, changed in one place. */
function altered(
  change: (file: {
    version: unknown;
    format: unknown;
    book: Record<string, unknown> & { cells: Record<string, unknown>[] };
  }) => void,
): string {
  const file = JSON.parse(writeBook(book));
  change(file);
  return JSON.stringify(file);
}

function issuesOf(text: string): readonly Issue[] {
  const read = readBook(text);
  return 'issues' in read ? read.issues : [];
}

describe('a page saved from a book', () => {
  const page = (bookText: string): string =>
    bookPage({
      title: 'Hinge "arms" <trial>',
      casting: 'arm',
      parts: [],
      bookText,
      bookFileName: 'hinge-arms.pourbook.json',
      scriptHash: '',
    });

  it('gives back the book that it holds', () => {
    expect(readBook(page(writeBook(book)))).toEqual({ book });
  });

  it.each([
    ['<!doctype html><title>no book</title>', 'The file is a web page that holds no book.'],
    ['metal', 'The file is not a book file.'],
    [writeBook(book).slice(0, 40), 'The book file is cut short or damaged: '],
  ])('is told from %s, in sentences that end', (text, told) => {
    const [issue, ...more] = issuesOf(text);
    expect(more).toEqual([]);
    expect(issue!.message).toContain(told);
    expect(issue!.message).toMatch(/[^.]\.$/);
    expect(issue!.remedy).toMatch(/\.$/);
  });
});

describe('round trip', () => {
  it('gives back the same book', () => {
    expect(readBook(writeBook(book))).toEqual({ book });
  });

  it('writes the same text again', () => {
    const text = writeBook(book);
    const read = readBook(text);
    expect('book' in read && writeBook(read.book)).toBe(text);
  });

  it('does not depend on the order in which fields were made', () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, part]) => [key, turned(part)]),
      );
    };
    expect(writeBook(turned(book) as Book)).toBe(writeBook(book));
  });

  it('keeps every number to the last digit, and any name', () => {
    const number = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(number, number, fc.string({ unit: 'binary', maxLength: 40 }), (x, y, name) => {
        const cells = book.cells.map((cell) =>
          cell.kind === 'section' ? { ...cell, name, section: { ...cell.section, pivot: { x, y } } } : cell,
        );
        expect(readBook(writeBook({ ...book, cells }))).toEqual({ book: { ...book, cells } });
      }),
      { numRuns: 300, seed: 20263 },
    );
  });

  it('keeps the second width of a region that tapers, beside the first', () => {
    const cells = book.cells.map((cell) => {
      if (cell.kind !== 'section') return cell;
      const regions = cell.section.regions.map((region) => ({ ...region, widthAtEnd: 0.05 }));
      return { ...cell, section: { ...cell.section, regions } };
    });
    const text = writeBook({ ...book, cells });
    expect(text).toContain('"width": 0.03, "widthAtEnd": 0.05');
    expect(readBook(text)).toEqual({ book: { ...book, cells } });
  });

  it('never writes a file that could not be opened again', () => {
    const cells = book.cells.map((cell) =>
      cell.kind === 'section' ? { ...cell, section: { ...cell.section, mouth: Number.NaN } } : cell,
    );
    expect(() => writeBook({ ...book, cells })).toThrow('NaN');
  });

  it('reads a file that an editor has marked at the beginning', () => {
    expect(readBook(`\uFEFF${writeBook(book)}`)).toEqual({ book });
  });
});

describe('refusals say where, what and what to do', () => {
  it.each([
    ['text that is not JSON', '{"format": ', ''],
    ['a list', '[]', 'format'],
    ['nothing', 'null', 'format'],
    [
      'another format',
      altered((file) => {
        file.format = 'sheet';
      }),
      'format',
    ],
    [
      'no version',
      altered((file) => {
        file.version = 'one';
      }),
      'version',
    ],
    [
      'a stray field',
      altered((file) => {
        Object.assign(file, { colour: 1 });
      }),
      'colour',
    ],
    [
      'a title that is a number',
      altered((file) => {
        file.book['title'] = 5;
      }),
      'book.title',
    ],
    [
      'cells that are no list',
      altered((file) => {
        Object.assign(file.book, { cells: {} });
      }),
      'book.cells',
    ],
    [
      'a cell of no known kind',
      altered((file) => {
        file.book.cells[0]!['kind'] = 'oven';
      }),
      'book.cells.0.kind',
    ],
    [
      'a missing field',
      altered((file) => {
        delete file.book.cells[0]!['text'];
      }),
      'book.cells.0.text',
    ],
    [
      'a misspelt field',
      altered((file) => {
        file.book.cells[0]!['colour'] = 1;
      }),
      'book.cells.0.colour',
    ],
    [
      'a repeated id',
      altered((file) => {
        file.book.cells[1]!['id'] = 'note-1';
      }),
      'book.cells.1.id',
    ],
  ])('%s', (_, text, path) => {
    const [issue] = issuesOf(text);
    expect(issue?.path).toBe(path);
    expect(issue?.message.length).toBeGreaterThan(10);
    expect(issue?.remedy.length).toBeGreaterThan(10);
  });

  it('words a wrong number with the cell it is in', () => {
    const text = altered((file) => {
      const section = file.book.cells[1]!['section'] as { roof: { y: unknown }[] };
      section.roof[2]!.y = 'thirty';
    });
    expect(issuesOf(text)).toEqual([
      {
        path: 'book.cells.1.section.roof.2.y',
        message: 'In “Section”: found "thirty" in place of a number.',
        remedy: 'Give a number.',
      },
    ]);
  });

  it('refuses a newer version politely, with both numbers', () => {
    const [issue] = issuesOf(
      altered((file) => {
        file.version = 7;
      }),
    );
    expect(issue!.message).toBe(
      'This book was saved by a newer Quietpour: it is version 7, and this one reads up to version 1.',
    );
  });

  it('refuses numbers JSON can write but nobody can use', () => {
    const text = writeBook(book).replace(/"mouth": 0\.\d+/, '"mouth": 1e999');
    expect(issuesOf(text)[0]?.path).toBe('book.cells.1.section.mouth');
  });

  it('refuses a file that is too large, too deep, or has too many cells', () => {
    expect(issuesOf(' '.repeat(LARGEST_FILE + 1))[0]?.message).toContain('5000000');
    expect(issuesOf('['.repeat(100_000))[0]?.message).toContain('deeper');
    const many = altered((file) => {
      file.book.cells = Array.from({ length: 501 }, () => file.book.cells[0]!);
    });
    expect(issuesOf(many)[0]).toMatchObject({ path: 'book.cells', remedy: 'Give at most 500 of them.' });
  });

  it('answers whatever it is given', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(issuesOf(text).length).toBeGreaterThan(0);
      }),
      { numRuns: 300, seed: 20264 },
    );
  });

  it('answers whatever stands in place of one field', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.nat(), (value, place) => {
        const file = JSON.parse(writeBook(book));
        const places = placesIn(file);
        const { holder, key } = places[place % places.length]!;
        holder[key] = value;
        const read = readBook(JSON.stringify(file));
        if ('issues' in read) for (const issue of read.issues) expect(issue.remedy).not.toBe('');
        else expect(() => writeBook(read.book)).not.toThrow();
      }),
      { numRuns: 500, seed: 20265 },
    );
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

describe('a book that grows on the page', () => {
  const note = (index: number) => ({
    kind: 'note' as const,
    id: `note-${index}`,
    name: `Note ${index}`,
    folded: false,
    text: '',
  });
  const withNotes = (count: number): Book => ({
    ...book,
    cells: Array.from({ length: count }, (_, index) => note(index)),
  });

  it('is told when it could not be opened again', () => {
    const [fits, grown] = [withNotes(500), withNotes(501)];
    expect(unreadable(fits, writeBook(fits))).toEqual([]);
    const [issue] = unreadable(grown, writeBook(grown));
    expect(issue).toEqual(issuesOf(writeBook(grown))[0]);
    expect(issue!.path).toBe('book.cells');
  });

  it('is told when its text has become too long', () => {
    const long = { ...book, cells: [{ ...note(0), text: 'x'.repeat(1000) }] };
    expect(unreadable(long, ' '.repeat(LARGEST_FILE + 1))[0]!.message).toContain('characters');
  });
});
