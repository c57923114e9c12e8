import { type BookIssue, bookIssues } from '$src/book/bookIssues';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell, CellId, PourCell } from '$src/cells/kinds';
import { needsOf } from '$src/cells/needs';
import type { Issue } from '$src/core/issue';
import type { PourPlan } from '$src/core/pour/plan';

/** A pour of the book, ready to be computed. */
export interface NamedPlan {
  readonly name: string;
  readonly plan: PourPlan;
}

export type Chosen =
  | { readonly plans: readonly NamedPlan[] }
  | { readonly issues: readonly (Issue | BookIssue)[] };

/** The pours to compute: all of the book, or what `name` says. All must be in order, else none is computed. */
export function choosePours(book: Book, name: string | null): Chosen {
  const pours = book.cells.filter((cell): cell is PourCell => cell.kind === 'pour');
  const wanted = name === null ? pours : poursNamed(book, pours, name);
  if (wanted.length === 0) return { issues: [noPour(name, pours)] };
  const evaluations = evaluateBook(book);
  const plans = wanted.flatMap((cell) => {
    const evaluation = evaluations.get(cell.id);
    return evaluation?.state === 'needs a run' ? [{ name: cell.name, plan: evaluation.plan }] : [];
  });
  if (plans.length === wanted.length) return { plans };
  const needed = allNeeds(book, wanted);
  return { issues: bookIssues(book).filter((issue) => needed.has(issue.cell)) };
}

function poursNamed(book: Book, pours: readonly PourCell[], name: string): PourCell[] {
  const isMeant = (cell: Cell) => cell.name === name || cell.id === name;
  const compares = book.cells.filter((cell) => cell.kind === 'compare' && isMeant(cell)).flatMap(needsOf);
  return pours.filter((cell) => isMeant(cell) || compares.includes(cell.id));
}

function noPour(name: string | null, pours: readonly PourCell[]): Issue {
  if (name === null) {
    return {
      path: 'book.cells',
      message: 'The book has no pour.',
      remedy: 'Add a pour cell in the page and save the book again.',
    };
  }
  const known = pours.map((cell) => `“${cell.name}”`).join(', ');
  return {
    path: 'book.cells',
    message: `There is no pour “${name}” in the book.`,
    remedy: `Name one of: ${known || 'none; the book has no pour'}.`,
  };
}

/** The cells themselves and all they need, however far back. */
function allNeeds(book: Book, cells: readonly Cell[]): Set<CellId> {
  const needed = new Set(cells.map((cell) => cell.id));
  // A set may grow while it is walked; every added id is visited too.
  for (const id of needed) {
    const cell = book.cells.find((one) => one.id === id);
    if (cell) for (const need of needsOf(cell)) needed.add(need);
  }
  return needed;
}
