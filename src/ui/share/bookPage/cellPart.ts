import { guessesAbout, guessesOver, guessesToldBy } from '$src/cells/guessHides';
import type {
  Book,
  Cell,
  CellId,
  ChargeCell,
  GuessCell,
  MetalCell,
  NoteCell,
  PourCell,
} from '$src/cells/kinds';
import { alloyName } from '$src/cells/metalName';
import { cautionOf, otherAlloy } from '$src/core/heat/cautions';
import { liquidOf } from '$src/core/metal/liquidOf';
import { endOf } from '$src/core/tilt/endOf';
import { METRIC } from '$src/core/units';
import { behind, whatPoursDid } from '$src/report/bookPage/behind';
import type { PagePart } from '$src/report/bookPage/bookPage';
import { pourPart } from '$src/report/bookPage/pourPart';
import { plainTable } from '$src/report/bookPage/table';
import { paragraph } from '$src/report/bookPage/words';
import { escaped } from '$src/report/drawing/paper';
import { metalInputs } from '$src/report/inputWords';
import { inUnits } from '$src/report/inUnits';
import { shownMass, shownVolume, withUnit } from '$src/report/measureText';
import { ownRows } from '$src/report/ownRows';
import { SPILL_BY_LEVEL, SPILL_CAUTION } from '$src/report/spilledReason';
import { startLevelWords } from '$src/report/startLevelWords';
import { loneTiltText } from '$src/report/tiltWords';
import { angleText } from '$src/report/wording';
import { renderMarkdown } from '../../cells/markdown';
import type { PageSource } from './pageSource';
import { cardBody, castingsBody, compareBody, guessBody, studyBody } from './resultPart';
import { sectionPart } from './sectionPart';

/** A cell as a part of the saved page. */
export function cellPart(source: PageSource, cell: Cell, index: number): PagePart {
  return { id: anchorAt(index), name: cell.name, kind: cell.kind, body: bodyOf(source, cell, `p${index}`) };
}

const anchorAt = (index: number): string => `cell-${index + 1}`;

/** What a guess is about stands behind a press, given or not: whoever is handed the page is to answer first. */
function bodyOf(source: PageSource, cell: Cell, id: string): string {
  const guesses = guessesAbout(source.book, cell);
  const shown = shownBody(source, cell, id);
  if (guesses.length === 0) return shown;
  return `<p>Answer first: ${linksTo(source.book, guesses)}.</p>\n${behind(pressFor(cell), shown)}`;
}

const pressFor = ({ kind }: Cell): string =>
  kind === 'note' ? 'Show the note' : whatPoursDid(kind === 'pour' ? 1 : 2);

function linksTo({ cells }: Book, guesses: readonly GuessCell[]): string {
  const place = (id: CellId): number => cells.findIndex((cell) => cell.id === id);
  return guesses.map(({ id, name }) => `<a href="#${anchorAt(place(id))}">${escaped(name)}</a>`).join(', ');
}

function shownBody(source: PageSource, cell: Cell, id: string): string {
  switch (cell.kind) {
    case 'note':
      return note(source.book, cell);
    case 'section':
      return isReady(source, cell) ? sectionPart(source, cell, id) : said(NOT_IN_ORDER);
    case 'metal':
      return metal(source, cell);
    case 'tilt':
      return isReady(source, cell)
        ? said(
            `${loneTiltText(cell.tilt, source.book.units ?? METRIC)}; from ${angleText(cell.tilt.start)} to ${angleText(endOf(cell.tilt))}.`,
          )
        : said(NOT_IN_ORDER);
    case 'charge':
      return charge(source, cell);
    case 'pour':
      return pour(source, cell, id);
    case 'compare':
      return compareBody(source, cell);
    case 'study':
      return studyBody(source, cell, id);
    case 'shop card':
      return cardBody(source, cell, id);
    case 'castings':
      return castingsBody(source, cell);
    case 'guess':
      return guess(source, cell);
  }
}

const NOT_IN_ORDER = 'Its inputs were not in order when the page was saved.';

const said = (text: string): string => `<p>${escaped(text)}</p>`;

const isReady = ({ evaluations }: PageSource, { id }: Cell): boolean =>
  evaluations.get(id)?.state === 'ready';

/** What a lesson keeps for after its guesses is folded on the page, and stays folded here until they are given; a note tied to one has its press. */
function note({ cells }: Book, { text, folded, after }: NoteCell): string {
  const words = `<div class="words">${renderMarkdown(text)}</div>`;
  const isKept = folded && after === undefined && cells.some((cell) => cell.kind === 'guess' && !cell.given);
  return isKept ? `<details><summary>For after the guesses</summary>${words}</details>` : words;
}

/** An answer that answers another guess as well says so before it is shown. */
function guess(source: PageSource, cell: GuessCell): string {
  const others = guessesToldBy(source.book, cell);
  const first =
    others.length > 0
      ? `<p>What the pour did answers more than this: answer ${linksTo(source.book, others)} too before you look.</p>\n`
      : '';
  return `${first}${guessBody(source, cell)}`;
}

function metal({ book }: PageSource, cell: MetalCell): string {
  const { metal } = cell;
  const units = book.units ?? METRIC;
  const rows = [
    ...metalInputs(liquidOf(metal), units).map(({ name, text }) => [name, inUnits(text, units)]),
    ...ownRows(metal, units).map(({ name, text, unit }) => [`${name} (yours)`, `${text} ${unit}`.trim()]),
  ];
  const caution = cautionOf(metal.base);
  return [
    plainTable({ caption: alloyName(cell), columns: ['property', 'value'], rows }),
    caution
      ? paragraph(`Caution. ${caution}${metal.thermal ? ` ${otherAlloy(metal.base)}` : ''}`, units)
      : '',
  ].join('\n');
}

/** Behind a press of its own as well: a press that is there only where metal spills would tell. */
const NOTHING_SPILLS = 'By the level fill nothing of this charge spills over a rim.';

/** What spills would answer a guess about a pour of this charge, so it stands behind a press as the pour does. */
function charge({ evaluations, book }: PageSource, { id }: ChargeCell): string {
  const evaluation = evaluations.get(id);
  if (!evaluation || !('charge' in evaluation)) return said(NOT_IN_ORDER);
  const { mass, startLevel, spilled } = evaluation.charge;
  const units = book.units ?? METRIC;
  // Turned into the book's units before it is rounded: rounded twice it reads otherwise than in the book.
  const told = `${withUnit(shownMass(mass, units))}; at the start ${startLevelWords(startLevel, units)}.`;
  const isHidden = guessesOver(book, id).length > 0;
  if (spilled <= 1e-9 && !isHidden) return said(told);
  const spill =
    spilled <= 1e-9
      ? NOTHING_SPILLS
      : `${withUnit(shownVolume(spilled, units))} of this charge spill over a rim ${SPILL_BY_LEVEL} ${SPILL_CAUTION} Ladle less, or raise the rim.`;
  return isHidden
    ? `${said(told)}\n${behind('Show whether this charge spills', said(spill))}`
    : said(`${told} ${spill}`);
}

function pour({ book, run }: PageSource, { id: cell, provenDwell = 0 }: PourCell, id: string): string {
  const { record, current, coarse, state } = run(cell);
  if (!record || !current) return said('This pour had not been run when the page was saved.');
  const isRough = coarse || state === 'stopped';
  return `${isRough ? said(coarse ? COARSE : STOPPED) : ''}${pourPart(record, id, book.units, provenDwell > 0 ? provenDwell : null)}`;
}

const COARSE = 'Not the last word: a first run on a coarse mesh, as it stood when the page was saved.';
const STOPPED = 'Not to the end: this run was stopped before the page was saved.';
