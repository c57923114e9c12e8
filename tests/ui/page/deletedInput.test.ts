import { expect, test } from 'vitest';
import { bringBack } from '$src/cells/bringBack';
import { addCell, deleteCell, renameCell, replaceCell } from '$src/cells/edit';
import type { Book } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { beginHistory, type History, recordStep } from '$src/ui/history';
import { deletedInput } from '$src/ui/page/deletedInput';
import { firstOf, sampleBook } from '../../book/sample';

const book = sampleBook();
const [pour, tilt] = [firstOf(book, 'pour'), firstOf(book, 'tilt')];

const after = (...steps: ((book: Book) => Book)[]): History<Book> =>
  steps.reduce(
    (history, step, index) => recordStep(history, `step ${index}`, step(history.now), null),
    beginHistory(book),
  );
const withoutTilt = (now: Book) => deleteCell(now, tilt.id);

test('an input that went with a deleted cell is known by the cell as it was', () => {
  const at = deletedInput(after(withoutTilt), pour.id, 'tilt');
  expect(at).toEqual({ cell: tilt, before: book, isLastStep: true });
  const renamed = (now: Book) => renameCell(now, pour.id, 'Other');
  expect(deletedInput(after(withoutTilt, renamed), pour.id, 'tilt')).toMatchObject({
    cell: tilt,
    isLastStep: false,
  });
});

test('one that was put aside by hand, or never chosen, was not deleted', () => {
  const aside = (now: Book) => replaceCell(now, { ...firstOf(now, 'pour'), tilt: null });
  expect(deletedInput(after(aside), pour.id, 'tilt')).toBeNull();
  expect(deletedInput(after(aside, withoutTilt), pour.id, 'tilt')).toBeNull();
  expect(deletedInput(beginHistory(withoutTilt(book)), pour.id, 'tilt')).toBeNull();
});

test('a cell brought back is where it was, and taken again by all that took it and nothing else since', () => {
  expect(bringBack(withoutTilt(book), tilt, book)).toEqual(book);
});

test('one whose name and number are taken by now has others, and leaves what was chosen since', () => {
  const without = withoutTilt(book);
  const other = { ...newCell('tilt', without), name: tilt.name };
  expect(other.id).toBe(tilt.id);
  const chosen = replaceCell(addCell(without, other), { ...firstOf(without, 'pour'), tilt: other.id });
  const back = bringBack(chosen, tilt, book);
  const own = back.cells[book.cells.indexOf(tilt)]!;
  expect(own).toMatchObject({ kind: 'tilt', name: `${tilt.name} 2` });
  expect(own.id).not.toBe(tilt.id);
  expect(firstOf(back, 'pour').tilt).toBe(other.id);
  expect(firstOf(back, 'charge').tilt).toBe(own.id);
});

test('a pour that went from a list is known too, and is back where it stood among its own', () => {
  const pours = [pour.id, 'second'];
  const listed = addCell(addCell(book, { ...pour, id: 'second', name: 'Second' }), {
    ...firstOf(book, 'compare'),
    id: 'two',
    pours,
  });
  const history = recordStep(beginHistory(listed), 'deleted', deleteCell(listed, pour.id), null);
  const at = deletedInput(history, 'two', 'pours');
  expect(at).toMatchObject({ cell: pour, isLastStep: true });
  expect(bringBack(history.now, at!.cell, at!.before)).toEqual(listed);
  // Put aside by hand.
  const aside = replaceCell(listed, { ...firstOf(book, 'compare'), id: 'two', pours: ['second'] });
  expect(deletedInput(recordStep(beginHistory(listed), 'aside', aside, null), 'two', 'pours')).toBeNull();
});
