import { mount, tick } from 'svelte';
import type { Book, CellId } from '$src/cells/kinds';
import { changedCells } from './changedCells';
import TakenBackNote from './TakenBackNote.svelte';

/** Less than that of a cell at the edge of the window is not seen [px]; at the top lies the bar with the place in the book. */
const EDGE = 64;

let isNoted = false;

/** Goes to what is other than it was before, where the window shows none of it; what had the focus keeps it where it can. */
export async function showChange(before: Book, now: Book): Promise<void> {
  if (!isNoted) mount(TakenBackNote, { target: document.body });
  isNoted = true;
  await tick();
  const ids = changedCells(before, now);
  const [first] = ids;
  if (first === undefined) {
    goTo(document.querySelector('main header'), 'book-title');
    return;
  }
  const seenAt = ids.flatMap((id) => [id, ...drawnIn(now, id)]);
  const inView = seenAt.find((id) => isInView(document.getElementById(id)));
  goTo(document.getElementById(inView ?? first), `name-${inView ?? first}`);
}

/** A charge is drawn in its section: whoever has just moved its level there is still at the drawing. */
function drawnIn(book: Book, id: CellId): CellId[] {
  const cell = book.cells.find((one) => one.id === id);
  const worksAt = document.activeElement?.closest('[data-cell]')?.id;
  return cell?.kind === 'charge' && cell.section !== null && cell.section === worksAt ? [cell.section] : [];
}

function goTo(place: Element | null, field: string): void {
  const isAway = !isInView(place);
  if (isAway) place?.scrollIntoView({ block: 'start' });
  const { activeElement } = document;
  const cell = activeElement?.closest('[data-cell]');
  // It went with its cell, or stays behind in another.
  const isLost =
    activeElement === null || activeElement === document.body || (isAway && cell && cell !== place);
  if (isLost) document.getElementById(field)?.focus({ preventScroll: true });
}

function isInView(place: Element | null): boolean {
  if (!place) return false;
  const { top, bottom } = place.getBoundingClientRect();
  return bottom > EDGE && top < innerHeight - EDGE;
}
