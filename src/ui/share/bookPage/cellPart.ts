import type { Evaluation } from '$src/cells/evaluate';
import { guessHiding } from '$src/cells/guessHides';
import type { Book, Cell } from '$src/cells/kinds';
import type { PourRecord } from '$src/core/pour/record';
import type { Section } from '$src/core/section/section';
import { endOf } from '$src/core/tilt/endOf';
import { METRIC } from '$src/core/units';
import type { PagePart } from '$src/report/bookPage/bookPage';
import { pourPart } from '$src/report/bookPage/pourPart';
import { escaped, paperFor } from '$src/report/drawing/paper';
import { sectionMarks } from '$src/report/drawing/sectionMarks';
import { steelAround } from '$src/report/drawing/steel';
import { inUnits } from '$src/report/inUnits';
import { startLevelWords } from '$src/report/startLevelWords';
import { angleText, fixed } from '$src/report/wording';
import { renderMarkdown } from '../../cells/markdown';

/** What the parts are made from. */
export interface PageSource {
  readonly book: Book;
  evaluation(cell: Cell): Evaluation;
  record(cell: Cell): PourRecord | null;
}

/** A cell as a part of the saved page. */
export function cellPart(source: PageSource, cell: Cell, index: number): PagePart {
  return { name: cell.name, kind: cell.kind, body: bodyOf(source, cell, `p${index}`) };
}

function bodyOf(source: PageSource, cell: Cell, id: string): string {
  if (guessHiding(source.book, cell)) return said('Hidden until the guess in this book is given.');
  switch (cell.kind) {
    case 'note':
      return `<div class="words">${renderMarkdown(cell.text)}</div>`;
    case 'section':
      return source.evaluation(cell).state === 'ready' ? drawing(cell.section, id) : said(NOT_IN_ORDER);
    case 'metal':
      return said(
        `${cell.metal.name}, ${inUnits(`${fixed(cell.metal.density.value, 0)} kg/m³`, source.book.units ?? METRIC)}.`,
      );
    case 'tilt':
      return source.evaluation(cell).state === 'ready'
        ? said(`${cell.tilt.kind}, from ${angleText(cell.tilt.start)} to ${angleText(endOf(cell.tilt))}.`)
        : said(NOT_IN_ORDER);
    case 'charge':
      return charge(source.evaluation(cell), source.book);
    case 'pour': {
      const record = source.record(cell);
      return record
        ? pourPart(record, id, source.book.units)
        : said('This pour had not been run when the page was saved.');
    }
    default:
      return said('Open the book in Quietpour to see this cell.');
  }
}

const NOT_IN_ORDER = 'Its inputs were not in order when the page was saved.';

const said = (text: string): string => `<p>${escaped(text)}</p>`;

function charge(evaluation: Evaluation, book: Book): string {
  if (!('charge' in evaluation)) return said(NOT_IN_ORDER);
  const { mass, startLevel } = evaluation.charge;
  const level = startLevelWords(startLevel, METRIC);
  return said(inUnits(`${fixed(mass, 2)} kg; at the start ${level}.`, book.units ?? METRIC));
}

const BOX = { left: 8, top: 8, right: 992, bottom: 352 };

function drawing(section: Section, id: string): string {
  const steel = steelAround(section);
  const paper = paperFor(steel.corners, 0, BOX);
  const marks = sectionMarks(paper, steel, null, { id, step: 7 });
  return `<svg viewBox="0 0 1000 360" role="img" aria-label="The section, die axis level">${marks}</svg>`;
}
