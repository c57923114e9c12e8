import { expect, test } from 'vitest';
import { addCell, replaceCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell, CellKind } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { motionOf } from '$src/core/tilt/motionOf';
import type { PlainTilt } from '$src/core/tilt/tilt';
import { METRIC } from '$src/core/units';
import { EMPTY_ROW } from '$src/report/castings/casting';
import { lengthFigure } from '$src/report/drawing/lengthFigure';
import { shownMass, withUnit } from '$src/report/measureText';
import { sectionInputs } from '$src/report/sectionInputs';
import { startLevelWords } from '$src/report/startLevelWords';
import { secondsText } from '$src/report/wording';
import { cellPart } from '$src/ui/share/bookPage/cellPart';
import { guessesSaved } from '$src/ui/share/bookPage/guessesSaved';
import { GUESSES_IN_PAGE } from '$src/ui/share/bookPage/guessWords';
import type { PageRun, PageSource } from '$src/ui/share/bookPage/pageSource';
import { asKind } from '$src/ui/tilt/tiltEdits';
import { firstOf, sampleBook } from '../../../book/sample';
import { inventedFigures, inventedRecord } from '../../../report/inventedRecord';

/** A speed that nothing else in a page would come to. */
const TOLD = '0.37 m/s';
const record = inventedRecord({ figures: { ...inventedFigures, peakFrontSpeed: 0.37 } });
const fresh: PageRun = { record, current: true, coarse: false, state: 'fresh' };

function bookWith(guess: { given: boolean; hides: boolean }): Book {
  const book = sampleBook();
  const pour = firstOf(book, 'pour').id;
  const cell = <K extends CellKind>(kind: K, part: Partial<Extract<Cell, { kind: K }>>) => ({
    ...(newCell(kind, book) as Extract<Cell, { kind: K }>),
    ...part,
  });
  return [
    cell('guess', { pours: [pour], ask: 'speed call', picked: 'under', question: 'Which?', ...guess }),
    cell('study', { pour }),
    cell('shop card', { pour }),
    cell('castings', { castings: [{ ...EMPTY_ROW, pour, good: 3 }] }),
    cell('note', { id: 'after', text: 'It runs at 0.37 m/s.', folded: true }),
  ].reduce<Book>(addCell, book);
}

const sourceOf = (book: Book, run: PageRun = fresh): PageSource => ({
  book,
  evaluations: evaluateBook(book),
  run: () => run,
  study: () => null,
});

const bodyOf = (source: PageSource, kind: CellKind): string =>
  cellPart(source, firstOf(source.book, kind), 0).body;
const RESULTS = ['pour', 'compare', 'study', 'castings', 'shop card'] as const;

/** What is read before anything is pressed. */
const seen = (body: string): string =>
  body.replace(/<details class="behind"><summary>(.*?)<\/summary>.*<\/details>/s, '[$1]');

test.each([false, true])(
  'what a guess asks about stands behind a press, with the guess to answer first; given: %s',
  (given) => {
    const source = sourceOf(bookWith({ given, hides: true }));
    const place = source.book.cells.findIndex(({ kind }) => kind === 'guess') + 1;
    for (const kind of RESULTS) {
      const body = bodyOf(source, kind);
      const press = kind === 'pour' ? 'Show what the pour did' : 'Show what the pours did';
      expect(seen(body), kind).toBe(
        `<p>Answer first: <a href="#cell-${place}">Guess first</a>.</p>\n[${press}]`,
      );
    }
    expect(cellPart(source, firstOf(source.book, 'guess'), place - 1).id).toBe(`cell-${place}`);
    expect(bodyOf(source, 'pour')).toContain(TOLD);
    const guess = bodyOf(source, 'guess');
    expect(seen(guess)).toContain('Which?');
    expect(seen(guess)).toContain('Answer it first, then look.');
    expect(seen(guess)).not.toMatch(/0\.37|computed|guessed|chose/i);
    expect(guess).toContain(TOLD);
  },
);

test('where the page is saved it is told what becomes of guesses, and which have no result in it', () => {
  const book = bookWith({ given: false, hides: true });
  expect(guessesSaved({ cells: [] }, () => true)).toBe('');
  expect(guessesSaved(book, () => true)).toBe(GUESSES_IN_PAGE);
  expect(guessesSaved(book, () => false)).toContain('without a result in it: Guess first.');
});

test('a charge reads as it does in the book, in whatever units: it is rounded once', () => {
  const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
  for (let grams = 800; grams < 900; grams += 7) {
    const sample = sampleBook();
    const book: Book = {
      ...sample,
      units,
      cells: sample.cells.map((cell) =>
        cell.kind === 'charge' ? { ...cell, charge: { by: 'mass', mass: grams / 1000 } } : cell,
      ),
    };
    const source = sourceOf(book);
    const charge = firstOf(book, 'charge');
    const evaluation = source.evaluations.get(charge.id)!;
    if (!('charge' in evaluation)) throw new Error('The charge is not in order.');
    const { mass, startLevel } = evaluation.charge;
    const body = cellPart(source, charge, 0).body;
    expect(body).toContain(withUnit(shownMass(mass, units)));
    expect(body).toContain(startLevelWords(startLevel, units));
  }
});

test('what a charge spills is said to be by the level fill, and stands behind a press where a guess hides its pour', () => {
  const spilling = (book: Book): string => {
    const charge = firstOf(book, 'charge');
    const full = replaceCell(book, { ...charge, charge: { by: 'mass', mass: 1.3 } });
    const source = sourceOf(full);
    const evaluation = source.evaluations.get(charge.id)!;
    if (!('charge' in evaluation)) throw new Error('The charge is not in order.');
    expect(evaluation.charge.spilled).toBeGreaterThan(1e-6);
    return cellPart(source, charge, 0).body;
  };
  const told = /of this charge spill over a rim as the body turns, by the level fill; a pour may lose less/;
  const open = spilling(sampleBook());
  expect(open).toMatch(told);
  expect(open).not.toContain('<details');
  for (const given of [false, true]) {
    const hidden = spilling(bookWith({ given, hides: true }));
    expect(hidden).toMatch(told);
    expect(seen(hidden)).not.toMatch(/rim|lose less/);
  }
  expect(spilling(bookWith({ given: false, hides: false }))).toBe(open);
});

test('the press of a charge under a guess does not tell by being there: a charge that spills nothing has it too', () => {
  const source = sourceOf(bookWith({ given: false, hides: true }));
  const charge = firstOf(source.book, 'charge');
  const evaluation = source.evaluations.get(charge.id)!;
  if (!('charge' in evaluation)) throw new Error('The charge is not in order.');
  expect(evaluation.charge.spilled).toBeLessThan(1e-9);
  const { body } = cellPart(source, charge, 0);
  expect(seen(body)).toContain('Show whether this charge spills');
  expect(seen(body)).not.toContain('nothing');
  expect(body).toContain('By the level fill nothing of this charge spills over a rim.');
});

test('a section is drawn with its metal, its measures and the names of its parts, wide and for a phone', () => {
  const source = sourceOf(sampleBook());
  const { section } = firstOf(source.book, 'section');
  const body = bodyOf(source, 'section');
  const basin = `${lengthFigure(section.mouth - section.floor[0]!.x, 'mm')} mm`;
  const drawings = body.split('<svg').slice(1);
  expect(drawings).toHaveLength(2);
  for (const drawing of drawings) {
    expect(drawing).toContain('class="metal"');
    expect(drawing).toContain(`>${basin}</text>`);
    expect(drawing).toMatch(/>mouth(, lip)?<\/text>/);
  }
  expect(drawings[0]).toContain('>die, roof half</text>');
  const charge = firstOf(source.book, 'charge');
  const evaluation = source.evaluations.get(charge.id)!;
  if (!('charge' in evaluation)) throw new Error('The charge is not in order.');
  expect(body).toContain(`Drawn with ${charge.name}: ${withUnit(shownMass(evaluation.charge.mass, METRIC))}`);
  for (const { name, text } of sectionInputs(section, METRIC))
    expect(body).toContain(`<th scope="row">${name}</th><td>${text}</td>`);
});

test('a metal tells what decides of it how it flows, and its caution', () => {
  const body = bodyOf(sourceOf(sampleBook()), 'metal');
  expect(body).toMatch(/critical speed<\/th><td>0\.49 m\/s/);
  expect(body).toContain('Caution. ');
});

test('once it is given, or when it hides nothing, each cell shows what it came to', () => {
  for (const guess of [
    { given: true, hides: true },
    { given: false, hides: false },
  ]) {
    const source = sourceOf(bookWith(guess));
    for (const kind of ['pour', 'compare'] as const) expect(bodyOf(source, kind), kind).toContain(TOLD);
    // The card gives the band with it.
    expect(bodyOf(source, 'shop card')).toContain('0.37');
    expect(bodyOf(source, 'castings')).toContain('One pour is no comparison.');
    expect(bodyOf(source, 'study')).toContain('Nothing of this study had been poured');
  }
  expect(bodyOf(sourceOf(bookWith({ given: true, hides: true })), 'guess')).toContain(TOLD);
});

test('a note kept for after the guesses stays folded until they are given', () => {
  const noteOf = (given: boolean): string => {
    const book = bookWith({ given, hides: true });
    return cellPart(sourceOf(book), book.cells.find(({ id }) => id === 'after')!, 0).body;
  };
  expect(noteOf(false)).toMatch(/^<details><summary>.*<\/details>$/s);
  expect(noteOf(true)).not.toContain('<details');
});

test('a note tied to a guess stands behind a press, given or not', () => {
  for (const given of [false, true]) {
    const open = bookWith({ given, hides: false });
    const guess = firstOf(open, 'guess').id;
    const cells = open.cells.map(
      (cell): Cell => (cell.id === 'after' ? ({ ...cell, after: guess } as Cell) : cell),
    );
    const body = cellPart(sourceOf({ ...open, cells }), cells.find(({ id }) => id === 'after')!, 0).body;
    expect(seen(body)).toMatch(
      /^<p>Answer first: <a href="#cell-\d+">Guess first<\/a>\.<\/p>\n\[Show the note\]$/,
    );
    expect(body).toMatch(/It runs at 0\.37\sm\/s\./);
  }
});

test('a card whose pour is not up to date keeps its warning, and loses it once the pour is', () => {
  const book = bookWith({ given: true, hides: true });
  const card = (run: Partial<PageRun>): string => bodyOf(sourceOf(book, { ...fresh, ...run }), 'shop card');
  expect(card({})).not.toContain('Do not pour by this card.');
  expect(card({ current: false, state: 'out of date' })).toMatch(
    /Do not pour by this card\.<\/b> It is out of date/,
  );
  expect(card({ coarse: true })).toMatch(/Do not pour by this card\.<\/b> It comes from a coarse run/);
  expect(card({ state: 'stopped' })).toMatch(/Do not pour by this card\.<\/b> Its run was stopped/);
  expect(card({ record: null, current: false })).toContain('had not been run when the page was saved');
});

test('a pour of a coarse mesh and a stopped one say so above their replay', () => {
  const book = bookWith({ given: true, hides: false });
  const pour = (run: Partial<PageRun>): string => bodyOf(sourceOf(book, { ...fresh, ...run }), 'pour');
  expect(pour({})).not.toMatch(/Not the last word|Not to the end/);
  expect(pour({ coarse: true })).toMatch(/^<p>Not the last word: a first run on a coarse mesh/);
  expect(pour({ state: 'stopped' })).toMatch(/^<p>Not to the end: this run was stopped/);
  expect(pour({ coarse: true })).toContain('data-replay');
});

test('a comparison leaves out pours that are not computed as they stand, and names them and the rough ones', () => {
  const book = bookWith({ given: true, hides: true });
  const old = bodyOf(sourceOf(book, { ...fresh, current: false }), 'compare');
  expect(old).toContain('Not computed when the page was saved: Pour and Pour 2.');
  expect(old).not.toContain(TOLD);
  expect(bodyOf(sourceOf(book, { ...fresh, coarse: true }), 'compare')).toContain(
    'Not the last word on Pour and Pour 2',
  );
});

test('a tilt says what it takes, one turned by a machine too', () => {
  const sample = sampleBook();
  const cell = firstOf(sample, 'tilt');
  const saidOf = (kind: 'steady' | 'staged' | 'machine'): string => {
    const tilt = asKind(cell.tilt, kind);
    const cells = sample.cells.map((one) => (one === cell ? { ...cell, tilt } : one));
    const { duration } = motionOf(tilt as PlainTilt);
    const body = bodyOf(sourceOf({ ...sample, cells }), 'tilt');
    expect(body.replaceAll('\u00a0', ' ')).toContain(secondsText(duration));
    return body;
  };
  // +30° to −90° at 8 °/s, and 0.15 s more at either end.
  expect(saidOf('steady').replaceAll('\u00a0', ' ')).toContain('steady 8 °/s, 15.3 s; from +30.0°');
  expect(saidOf('staged')).toContain('in all');
  expect(saidOf('machine')).toContain('empty');
});

test('a metal with freezing data of its user’s own is told by them, with what another alloy may hold', () => {
  const book = sampleBook();
  const cell = firstOf(book, 'metal');
  const thermal = { liquidus: { value: 873.15, source: 'Typed in by you', confidence: 'yours' } } as const;
  const own = replaceCell(book, { ...cell, metal: { ...cell.metal, thermal } });
  const body = bodyOf(sourceOf(own), 'metal');
  expect(body).toContain('liquidus (yours)');
  expect(body).toContain('600 °C');
  expect(body).toContain('another alloy may hold other dangers');
  expect(body).toContain(', changed');
  expect(bodyOf(sourceOf(book), 'metal')).not.toMatch(/liquidus|another alloy/);
});
