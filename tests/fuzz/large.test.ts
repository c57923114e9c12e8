import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell } from '$src/cells/kinds';
import { dependentsOf } from '$src/cells/needs';
import { withReferences } from '$src/cells/withReferences';
import { simulate } from '$src/core/pour/simulate';
import { compare } from '$src/report/compare';
import { plainText } from '$src/report/sentence';
import { drawnOf, drawnText, MOST_DRAWN } from '$src/ui/compare/drawn';
import { inventedRecord } from '../report/inventedRecord';
import { samplePlan } from '../study/samplePlan';

const STATIC = new URL('../../static/two-tilts.pourbook.json', import.meta.url);

/** The example over and over, each time with ids of its own, up to this many cells. */
function largeBook(count: number): Book {
  const read = readBook(readFileSync(STATIC, 'utf8'));
  if ('issues' in read) throw new Error('The example does not open.');
  const { cells } = read.book;
  const copies = Array.from({ length: Math.ceil(count / cells.length) }, (_, copy) =>
    cells.map(
      (cell): Cell =>
        withReferences({ ...structuredClone(cell), id: `${cell.id}-${copy}` }, (id) => `${id}-${copy}`),
    ),
  );
  return { ...read.book, cells: copies.flat().slice(0, count) };
}

describe('a book of 200 cells', () => {
  const book = largeBook(200);

  it('opens, and all of it is evaluated', () => {
    expect(readBook(writeBook(book))).toEqual({ book });
    const states = [...evaluateBook(book).values()].map(({ state }) => state);
    expect(states).toHaveLength(200);
    expect(states.filter((state) => state === 'wrong input' || state === 'blocked')).toEqual([]);
  });

  it('a change of one cell costs that cell alone, and those that take it', () => {
    const before = evaluateBook(book);
    const place = book.cells.findIndex(({ kind }) => kind === 'tilt');
    const changed = { ...book.cells[place]!, name: 'Another name' };
    const after = evaluateBook({ ...book, cells: book.cells.with(place, changed) });
    const anew = book.cells.filter(({ id }) => before.get(id) !== after.get(id)).map(({ id }) => id);
    const touched = [changed.id, ...dependentsOf(book, changed.id)];
    expect(touched.length).toBeLessThan(20);
    for (const id of anew) expect(touched).toContain(id);
  });
});

describe('a pour on 2,000 mesh cells', () => {
  it('begins, can be stopped, and its record takes kilobytes a frame', () => {
    const run = simulate(samplePlan(2000));
    let step = run.next();
    expect(step.done).toBe(false);
    step = run.next({ stop: true });
    while (!step.done) step = run.next({ stop: true });
    const { frames, outcome, outline } = step.value;
    expect(outcome.kind).toBe('stopped by the user');
    const cells = outline.x.length - 1;
    expect(cells).toBeGreaterThan(1900);
    expect(cells).toBeLessThan(2100);
    const fields = [frames.level, frames.depth, frames.speed];
    for (const { data, shape } of fields) expect(data.length).toBe(shape[0] * cells);
    // Three fields of four bytes: a pour of ten seconds at fifty frames each takes twelve megabytes at most.
    expect(fields.reduce((sum, { data }) => sum + data.byteLength, 0) / frames.time.length).toBe(12 * cells);
  });
});

describe('50 pours in one comparison', () => {
  const pours = Array.from({ length: 50 }, (_, index) => ({
    name: `Pour ${index + 1}`,
    record: inventedRecord(),
  }));

  it('all are in the tables, and in one sentence that can be read', () => {
    const made = compare(pours);
    for (const { figures, differences } of made.figures)
      expect([figures.length, differences.length]).toEqual([50, 50]);
    expect(plainText(made.sentence).length).toBeLessThan(400);
  });

  it('of those that do not fill the count is said, not fifty names', () => {
    const record = inventedRecord();
    const short = { ...record, figures: { ...record.figures, filledTime: null } };
    const some = pours.map((pour, index) => (index % 5 === 0 ? pour : { ...pour, record: short }));
    expect(plainText(compare(some).sentence)).toContain('40 of 50 do not fill.');
  });

  it('pictures and charts show the first ones and say so; a few are all drawn in silence', () => {
    expect(drawnOf(pours)).toEqual(pours.slice(0, MOST_DRAWN));
    expect(drawnText(50)).toContain(`first ${MOST_DRAWN} of 50`);
    expect(drawnText(MOST_DRAWN)).toBeNull();
  });
});
