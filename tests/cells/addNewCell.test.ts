import { expect, test } from 'vitest';
import { addNewCell } from '$src/cells/addNewCell';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, CellKind, SectionCell, StudyCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { pitBehindSill } from '$src/core/section/shapes';
import { firstOf } from '../book/sample';

const EMPTY: Book = { title: '', casting: '', cells: [] };
const begun = (kinds: readonly CellKind[], book = EMPTY): Book =>
  kinds.reduce((so, kind) => addNewCell(so, newCell(kind, so)), book);

test.each([
  ['as they are offered', ['section', 'metal', 'charge', 'tilt', 'pour', 'study', 'shop card']],
  ['from the end', ['shop card', 'study', 'pour', 'tilt', 'charge', 'metal', 'section']],
  ['anyhow', ['pour', 'charge', 'study', 'section', 'shop card', 'tilt', 'metal']],
] as const)('a book begun %s comes to the same, and nothing is lacking', (_, kinds) => {
  const book = begun(kinds);
  const states = new Set([...evaluateBook(book).values()].map(({ state }) => state));
  expect([...states].sort()).toEqual(['needs a run', 'ready']);
  const order = [...kinds].sort();
  const inOrder = (cells: Book['cells']) => order.map((kind) => cells.find((cell) => cell.kind === kind));
  expect(inOrder(book.cells)).toEqual(
    inOrder(begun(['section', 'metal', 'charge', 'tilt', 'pour', 'study', 'shop card']).cells),
  );
});

test('what is chosen stays, a second cell of a kind is taken by nobody, and a locked cell is left alone', () => {
  const book = begun(['section', 'metal', 'tilt', 'charge']);
  const two = addNewCell(book, newCell('tilt', book));
  expect(firstOf(two, 'charge').tilt).toBe('tilt-1');
  const locked = { ...newCell('charge', EMPTY), locked: true };
  expect(
    firstOf(addNewCell({ ...EMPTY, cells: [locked] }, newCell('metal', EMPTY)), 'charge').metal,
  ).toBeNull();
});

test('a charge that waited for its section is one that the basin holds, unless it was typed', () => {
  const shop = begun(['metal', 'tilt', 'charge']);
  const level = {
    ...shop,
    cells: shop.cells.map((cell) =>
      cell.kind === 'tilt' ? { ...cell, tilt: { ...cell.tilt, start: 0 } } : cell,
    ),
  };
  const section = { ...newCell('section', level), section: pitBehindSill() } as SectionCell;
  expect(firstOf(addNewCell(level, section), 'charge').charge).toEqual({ by: 'fill level', fromLip: -0.001 });
  const typed = {
    ...level,
    cells: level.cells.map((cell) =>
      cell.kind === 'charge' ? { ...cell, charge: { by: 'mass' as const, mass: 0.4 } } : cell,
    ),
  };
  expect(firstOf(addNewCell(typed, section), 'charge').charge).toEqual({ by: 'mass', mass: 0.4 });
});

test('a study that waited for its pour is about that one', () => {
  const book = begun(['section', 'metal', 'tilt', 'charge', 'study']);
  const study = (so: Book): StudyCell => firstOf(so, 'study');
  expect(study(book).pour).toBeNull();
  expect(study(addNewCell(book, newCell('pour', book))).pour).toBe('pour-1');
});
