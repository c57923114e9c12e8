import { isClip, readClip, writeClip } from '$src/book/clipText';
import { clipOf, type Pasted, pasteClip } from '$src/cells/clip';
import { deleteCell } from '$src/cells/edit';
import type { CellId } from '$src/cells/kinds';
import { listText } from '$src/report/wording';
import { bench } from '../bench.svelte';
import { desk } from '../desk.svelte';
import { focusLater } from '../page/focusLater';

/** What was copied last, for browsers that do not let a menu read the system's clipboard. */
let last = '';

export function clipText(id: CellId): string {
  last = writeClip(clipOf(bench.book, [id]));
  return last;
}

/** Copies by a menu; the system's clipboard where the browser allows it, else this page's own. */
export async function copyByMenu(id: CellId): Promise<void> {
  const text = clipText(id);
  await navigator.clipboard?.writeText(text).catch(() => undefined);
  said(id, 'copied');
}

export function said(id: CellId, what: 'copied' | 'cut'): void {
  bench.announcement = `${bench.cell(id)?.name ?? 'The cell'} ${what}, with all it takes. Paste it here or in another book.`;
}

export function cutCell(id: CellId): void {
  const place = bench.book.cells.findIndex((cell) => cell.id === id);
  said(id, 'cut');
  bench.change(`${bench.cell(id)?.name} cut`, (book) => deleteCell(book, id));
  const neighbour = bench.book.cells[place] ?? bench.book.cells[place - 1];
  focusLater(neighbour ? `more-${neighbour.id}` : 'pick-note');
}

/** Pastes what the system's clipboard holds, or what was copied on this page last. */
export async function pasteByMenu(after: CellId): Promise<void> {
  const system = await navigator.clipboard?.readText?.().catch(() => '');
  pasteText(system && isClip(system) ? system : last, after);
}

/** Whether the text held cells; anything wrong with them is told, and the book stays as it is. */
export function pasteText(text: string, after: CellId | null): boolean {
  const result = readClip(text);
  if ('issues' in result) {
    desk.notice = {
      message: 'Nothing was pasted.',
      remedy: 'The book is as it was.',
      issues: result.issues,
    };
    return false;
  }
  let pasted: Pasted | null = null;
  bench.change('Cells pasted', (book) => {
    pasted = pasteClip(book, result.clip, after);
    return pasted.book;
  });
  if (pasted) tell(pasted);
  return true;
}

function tell({ pasted, copied, relinked }: Pasted): void {
  const names = pasted.flatMap((id) => bench.cell(id)?.name ?? []);
  const parts = [`${listText(names)} pasted`];
  if (copied.length > 0)
    parts.push(`with ${copied.length === 1 ? 'a copy' : 'copies'} of ${listText(copied)}`);
  if (relinked.length > 0) parts.push(`taking ${listText(relinked)} of this book`);
  bench.announcement = `${parts.join(', ')}.`;
  focusLater(`more-${pasted[0]}`);
}
