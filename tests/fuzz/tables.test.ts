import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBook } from '$src/book/readBook';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { guessText, readRows } from '$src/core/tilt/measured/readRows';
import { repeatsOf } from '$src/core/tilt/measured/repeats';
import { PLAIN_TREATMENT, treatReadings } from '$src/core/tilt/measured/treatReadings';
import { EMPTY_ROW } from '$src/report/castings/casting';
import { castingsCsv, readCastings } from '$src/report/castings/castingsFile';
import { linkOf, readLink } from '$src/ui/share/bookLink';
import { cut, cutText } from './mutations';
import { expectNothingShared, expectReadable, promptly } from './readable';

const cuts = fc.array(cut, { minLength: 1, maxLength: 3 });
const RUNS = Number(process.env['QUIETPOUR_FUZZ'] ?? 1);
const settings = (numRuns: number) => ({ numRuns: numRuns * RUNS, seed: RUNS > 1 ? Date.now() : 20269 });

const row = (index: number, separator: string): string => [index / 50, 30 - 2 * index].join(separator);
const file = (separator: string, count = 40): string =>
  `time (s)${separator}angle (deg)\n${Array.from({ length: count }, (_, index) => row(index, separator)).join('\n')}\n`;
const FILES = [file(','), file(';'), file('\t'), file(' '), file(';').replaceAll('.', ',')];

/** What becomes of a measured tilt on the page: read, said in words, treated, made one of several, checked. */
function measure(text: string): void {
  const read = readRows(text);
  if ('issues' in read) {
    expectReadable(read.issues);
    return;
  }
  if (read.wrongRows.length > 0) expectReadable(read.wrongRows);
  expect(guessText(read.guess, read.rows)).not.toMatch(/NaN|undefined/);
  const treated = treatReadings(read.rows, PLAIN_TREATMENT);
  const { typical, band } = repeatsOf([treated, treated]);
  const limits = { highestStart: 2, lowestEnd: -2, slowest: 0, quickest: 10 };
  const tilt = { kind: 'measured', start: typical.start, knots: typical.knots, origin: '', limits } as const;
  const { issues } = checkTilt(band ? { ...tilt, band } : tilt);
  if (issues.length > 0) expectReadable(issues);
}

describe('measured tilts', () => {
  it('broken in any way: a tilt or readable issues', () => {
    for (const text of FILES) measure(text);
    fc.assert(
      fc.property(fc.constantFrom(...FILES), cuts, (text, list) =>
        promptly(() => measure(list.reduce(cutText, text))),
      ),
      settings(1000),
    );
    expectNothingShared();
  });

  it.each([
    ['half a million readings', () => file(',', 500_000)],
    ['one line of megabytes', () => `time,angle\n${'1,'.repeat(2_000_000)}`],
    ['nothing but line ends', () => '\n'.repeat(3_000_000)],
    ['all at one time', () => `time,angle\n${'1,1\n'.repeat(200_000)}`],
  ])('%s', (_, text) => {
    const whole = text();
    promptly(() => measure(whole));
  });
});

const POURS = [{ id: 'pour-1', name: 'Level, quick' }];
const LOG = castingsCsv(
  Array.from({ length: 12 }, (_, index) => ({
    ...EMPTY_ROW,
    date: '3 May',
    pour: 'pour-1',
    good: index + 1,
    tiltTime: 4.5,
    remark: 'first "warm", then cold',
  })),
  POURS,
);

/** Reads a log; every row it takes is one that a book can hold. */
function takeLog(text: string): void {
  const { castings, issues } = readCastings(text, { pours: POURS });
  if (issues.length > 0) expectReadable(issues);
  const cell = {
    kind: 'castings',
    id: 'log',
    name: 'Log',
    folded: false,
    castings,
    counted: 'any',
    against: 'front speed',
  };
  const book = { title: '', casting: '', cells: [cell] };
  const read = readBook(JSON.stringify({ format: 'pourbook', version: 1, book }));
  expect('issues' in read ? read.issues : []).toEqual([]);
}

describe('logs of castings', () => {
  it('broken in any way: rows that a book can hold, the others named', () => {
    takeLog(LOG);
    fc.assert(
      fc.property(fc.constantFrom(LOG, LOG.replaceAll(',', ';')), cuts, (text, list) =>
        promptly(() => takeLog(list.reduce(cutText, text))),
      ),
      settings(1000),
    );
    expectNothingShared();
  });

  it('rows beyond what a book holds are counted aloud, not dropped in silence', () => {
    const [head, first] = LOG.split('\n');
    const { castings, issues } = promptly(() =>
      readCastings(`${head}\n${`${first}\n`.repeat(30_000)}`, { pours: POURS }),
    );
    expect(castings).toHaveLength(2000);
    expect(issues.map(({ message }) => message).join(' ')).toContain('28000');
  });

  it('columns and quotes without end', () => {
    promptly(() => takeLog(`good,${'__proto__,'.repeat(200_000)}\n${'1,'.repeat(200_000)}`));
    promptly(() => takeLog(`good,remark\n1,"${'x'.repeat(3_000_000)}`));
  });
});

describe('links', () => {
  const whole = JSON.stringify({
    format: 'pourbook',
    version: 1,
    book: { title: 'Small', casting: '', cells: [] },
  });

  it('broken in any way: the text of a book, or readable', async () => {
    const link = (await linkOf(whole))!;
    await fc.assert(
      fc.asyncProperty(cuts, async (list) => {
        const read = await readLink(list.reduce(cutText, link));
        if ('issue' in read) return expectReadable([read.issue]);
        const book = readBook(read.text);
        if ('issues' in book) expectReadable(book.issues);
      }),
      settings(500),
    );
  });

  it('one that unpacks to more than any book is refused', async () => {
    const bomb = (await linkOf(' '.repeat(12_000_000)))!;
    expect(await readLink(bomb)).toHaveProperty('issue');
  });
});
