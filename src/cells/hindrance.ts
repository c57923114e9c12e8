import type { Issue } from '$src/core/issue';
import type { Evaluation } from './evaluate';
import type { Known } from './evaluateCell';
import type { Cell, CellId } from './kinds';
import { type Reference, referencesOf } from './needs';
import { remember } from './remember';

/** What keeps a cell from being worked out: a reference that leads nowhere, or a needed cell that is wrong itself. */
export function hindrance(cell: Cell, known: Known): Evaluation | null {
  const references = referencesOf(cell);
  const loose = references.flatMap((reference) => looseEnd(reference, known));
  if (loose.length > 0) return looseEnds(cell, JSON.stringify(loose));
  const by = references.flatMap(({ id }) =>
    id !== null && isHindered(known.evaluations.get(id)) ? [id] : [],
  );
  if (by.length === 0) return null;
  const names = [...new Set(by)].map((id) => `“${known.cells.get(id)!.name}”`).join(' and ');
  return blocked(cell, JSON.stringify([...new Set(by)]), `Waits for ${names} to be put right.`);
}

/** Remembered by content, so that an unchanged cell gives the same object again. */
const looseEnds = remember(
  (_: Cell, issues: string): Evaluation => ({ state: 'wrong input', issues: JSON.parse(issues) as Issue[] }),
);
const blocked = remember(
  (_: Cell, by: string, reason: string): Evaluation => ({
    state: 'blocked',
    by: JSON.parse(by) as CellId[],
    reason,
  }),
);

function isHindered(evaluation: Evaluation | undefined): boolean {
  return evaluation?.state === 'wrong input' || evaluation?.state === 'blocked';
}

function looseEnd({ path, kind, id }: Reference, known: Known): Issue[] {
  if (id === null)
    return [
      { path, message: `No ${kind} is chosen.`, remedy: `Choose a ${kind} cell, or add one.`, lacking: kind },
    ];
  const found = known.cells.get(id);
  if (found?.kind === kind) return [];
  const message = found
    ? `“${found.name}” is a ${found.kind}, not a ${kind}.`
    : `The ${kind} it takes is not in the book.`;
  return [{ path, message, remedy: `Choose a ${kind} cell.` }];
}
