import { type BookIssue, bookIssues } from '$src/book/bookIssues';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, PourCell, ShopCardCell } from '$src/cells/kinds';
import type { Issue } from '$src/core/issue';
import type { PourPlan } from '$src/core/pour/plan';

/** A card to be written: its pour, and the words of the card cell where the book has one. */
export interface ChosenCard {
  readonly pour: PourCell;
  readonly plan: PourPlan;
  readonly card: Pick<ShopCardCell, 'name' | 'date' | 'remark'>;
}

export type Chosen = ChosenCard | { readonly issues: readonly (Issue | BookIssue)[] };

/** The card of that name or id, or a card of the pour of that name; without a name the only card, or the only pour. */
export function chooseCard(book: Book, name: string | null): Chosen {
  const cell = meantCell(book, name);
  if (!cell) return { issues: [unclear(book, name)] };
  const pour = cell.kind === 'pour' ? cell : pourOf(book, cell);
  const evaluation = pour && evaluateBook(book).get(pour.id);
  if (!pour || evaluation?.state !== 'needs a run') return { issues: bookIssues(book) };
  const card = cell.kind === 'pour' ? { name: cell.name, date: '', remark: '' } : cell;
  return { pour, plan: evaluation.plan, card };
}

function meantCell(book: Book, name: string | null): ShopCardCell | PourCell | null {
  const cards = book.cells.filter((cell) => cell.kind === 'shop card');
  const pours = book.cells.filter((cell) => cell.kind === 'pour');
  if (name === null) return only(cards) ?? (cards.length === 0 ? only(pours) : null);
  const isMeant = (cell: ShopCardCell | PourCell) => cell.name === name || cell.id === name;
  return only(cards.filter(isMeant)) ?? only(pours.filter(isMeant));
}

const only = <T>(all: readonly T[]): T | null => (all.length === 1 ? all[0]! : null);

const pourOf = (book: Book, card: ShopCardCell): PourCell | null =>
  book.cells.find((cell): cell is PourCell => cell.kind === 'pour' && cell.id === card.pour) ?? null;

function unclear(book: Book, name: string | null): Issue {
  const known = book.cells
    .filter(({ kind }) => kind === 'shop card' || kind === 'pour')
    .map((cell) => `“${cell.name}”`);
  return {
    path: 'book.cells',
    message: name === null ? 'Which card is meant?' : `There is no one card or pour “${name}” in the book.`,
    remedy: `Name one with --cell: ${known.join(', ') || 'none; the book has no pour'}.`,
  };
}
