import { isClip } from '$src/book/clipText';
import { moveCell } from '$src/cells/edit';
import type { Cell, CellId } from '$src/cells/kinds';
import { bench } from '../bench.svelte';
import { duplicateCell, foldCell } from '../page/cellSteps';
import { focusLater } from '../page/focusLater';
import { placeInBook } from '../page/placeInBook.svelte';
import { takenBack } from '../page/takenBack.svelte';
import { clipText, cutCell, pasteText, said } from './cellClipboard';
import { isTextField } from './isTextField';
import { forgetTyping, holdsTyping, isTypedInto, watchTyping } from './ownTyping';

/** The cell that has the focus, else the one that is being read. */
function cellAtHand(): Cell | null {
  const focused = document.activeElement?.closest('[data-cell]')?.id;
  return bench.cell(focused ?? placeInBook.here);
}

function holdsChosenText(): boolean {
  const { activeElement } = document;
  if (activeElement instanceof HTMLTextAreaElement) return true;
  if (activeElement instanceof HTMLInputElement && isTextField(activeElement))
    return activeElement.selectionStart !== activeElement.selectionEnd;
  return !(getSelection()?.isCollapsed ?? true);
}

export function copied(event: ClipboardEvent): void {
  const cell = cellAtHand();
  if (!cell || holdsChosenText()) return;
  event.preventDefault();
  event.clipboardData?.setData('text/plain', clipText(cell.id));
  if (event.type !== 'cut') said(cell.id, 'copied');
  else if (!cell.locked) cutCell(cell.id);
}

export function pasted(event: ClipboardEvent): void {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  if (!isClip(text) || document.activeElement instanceof HTMLTextAreaElement) return;
  event.preventDefault();
  pasteText(text, cellAtHand()?.id ?? null);
}

function move(cell: Cell, by: -1 | 1): void {
  bench.change(`${cell.name} moved`, (book) => moveCell(book, cell.id, by));
  const place = bench.book.cells.findIndex(({ id }) => id === cell.id) + 1;
  bench.announcement = `${cell.name} is now ${place} of ${bench.book.cells.length}.`;
  keepFocus(cell.id);
}

/** A cell that is moved takes the focus with it; where nothing had it, its name field gets it. */
function keepFocus(id: CellId): void {
  const focused = document.activeElement;
  focusLater(focused?.closest('[data-cell]')?.id === id && focused.id ? focused.id : `name-${id}`);
}

function goBy(cell: Cell, by: -1 | 1): void {
  const place = bench.book.cells.findIndex(({ id }) => id === cell.id);
  const next = bench.book.cells[place + by];
  if (!next) return;
  document.getElementById(next.id)?.scrollIntoView({ block: 'start' });
  focusLater(`name-${next.id}`);
}

function fold(cell: Cell): void {
  foldCell(cell);
  focusLater(`name-${cell.id}`);
}

const ON_A_CELL: Readonly<Record<string, (cell: Cell) => void>> = {
  F8: fold,
  'Alt Shift ArrowUp': (cell) => move(cell, -1),
  'Alt Shift ArrowDown': (cell) => move(cell, 1),
  'Alt Shift PageUp': (cell) => goBy(cell, -1),
  'Alt Shift PageDown': (cell) => goBy(cell, 1),
  'Alt Shift Insert': duplicateCell,
};

/** What was pressed, e.g. "Alt Shift ArrowUp". */
const chord = ({ altKey, ctrlKey, metaKey, shiftKey, key }: KeyboardEvent): string =>
  [ctrlKey && 'Ctrl', metaKey && 'Meta', altKey && 'Alt', shiftKey && 'Shift', key].filter(Boolean).join(' ');

/** Typing that the browser has taken back whole is still a step of the book, which shows nothing when it goes. */
function undo(target: EventTarget | null): void {
  const before = JSON.stringify(bench.book);
  takenBack.undo();
  if (isTypedInto(target) && JSON.stringify(bench.book) === before) takenBack.undo();
}

/** A field keeps these keys to itself while it holds what was typed; else they are the book's. */
function stepKey(event: KeyboardEvent): void {
  const { target, altKey, ctrlKey, metaKey, shiftKey } = event;
  const key = event.key.toLowerCase();
  if (!(ctrlKey || metaKey) || altKey || holdsTyping(target)) return;
  if (key === 'z' && !shiftKey) undo(target);
  // Typing that was taken back comes again by the browser.
  else if ((key === 'y' || key === 'z') && !isTypedInto(target)) takenBack.redo();
  else return;
  event.preventDefault();
  forgetTyping();
}

/** Call once, before the first key. */
export const begin = (): void => watchTyping();

export function keyPressed(event: KeyboardEvent): void {
  if (!cellKey(event)) stepKey(event);
}

/** Whether the key was one of a cell's own, and was done. */
function cellKey(event: KeyboardEvent): boolean {
  const act = ON_A_CELL[chord(event)];
  const cell = act && cellAtHand();
  if (!act || !cell) return false;
  event.preventDefault();
  act(cell);
  return true;
}
