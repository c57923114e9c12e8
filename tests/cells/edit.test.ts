import { describe, expect, it } from 'vitest';
import { copyForMetal } from '$src/cells/copyForMetal';
import { copyPour } from '$src/cells/copyPour';
import {
  addCell,
  copyCell,
  deleteCell,
  moveCell,
  moveCellTo,
  renameCell,
  replaceCell,
} from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import { freeId, freeName } from '$src/cells/names';
import { dependentsOf, inOrder, needsOf, takenBy } from '$src/cells/needs';
import { newCell } from '$src/cells/newCell';
import { metalNamed } from '$src/core/metal/metals';
import { firstOf, sampleBook } from '../book/sample';

const book = sampleBook();
const ids = (changed = book): string[] => changed.cells.map((cell) => cell.id);

describe('what needs what', () => {
  it('knows what a cell needs and what takes it', () => {
    expect(needsOf(firstOf(book, 'pour'))).toEqual(['section-1', 'metal-1', 'charge-1', 'tilt-1']);
    expect(needsOf(firstOf(book, 'note'))).toEqual([]);
    expect(takenBy(book, 'section-1')).toEqual(['charge-1', 'pour-1', 'pour-2']);
  });

  it('follows a change to all that depends on it', () => {
    expect(dependentsOf(book, 'metal-1')).toEqual(['charge-1', 'pour-1', 'pour-2', 'compare-1']);
    expect(dependentsOf(book, 'pour-1')).toEqual(['compare-1']);
    expect(dependentsOf(book, 'note-1')).toEqual([]);
  });

  it('puts what is needed first, whatever the order on the page', () => {
    const turned = { ...book, cells: book.cells.toReversed() };
    const order = inOrder(turned).map((cell) => cell.id);
    for (const cell of turned.cells) {
      for (const need of needsOf(cell)) expect(order.indexOf(need)).toBeLessThan(order.indexOf(cell.id));
    }
  });
});

describe('changes of a book', () => {
  it('copies a pour with its section, tilt and charge, wired to each other and not to the first', () => {
    const pour = firstOf(book, 'pour');
    const changed = copyPour(book, pour.id);
    expect(changed.cells).toHaveLength(book.cells.length + 4);
    const copy = changed.cells.find((cell) => cell.name === `${pour.name} copy`);
    if (copy?.kind !== 'pour') throw new Error('no copy');
    expect(copy.metal).toBe(pour.metal);
    expect([pour.section, pour.charge, pour.tilt]).not.toContain(copy.tilt);
    const charge = changed.cells.find((cell) => cell.id === copy.charge);
    expect(charge).toMatchObject({ section: copy.section, tilt: copy.tilt, metal: pour.metal });
    for (const cell of book.cells) expect(changed.cells).toContainEqual(cell);
  });

  it('copies a pour with its charge or its tilt alone, and shares the rest', () => {
    const pour = firstOf(book, 'pour');
    for (const own of ['charge', 'tilt'] as const) {
      const changed = copyPour(book, pour.id, [own]);
      expect(changed.cells).toHaveLength(book.cells.length + 2);
      const copy = changed.cells.find((cell) => cell.name === `${pour.name} copy`);
      if (copy?.kind !== 'pour') throw new Error('no copy');
      for (const input of ['section', 'metal', 'charge', 'tilt'] as const)
        expect(copy[input] === pour[input]).toBe(input !== own);
    }
  });

  it('copies a pour with tilt and charge of its own as often as wanted: a change of one leaves the others as they were', () => {
    const pour = firstOf(book, 'pour');
    const twice = copyPour(copyPour(book, pour.id, ['tilt', 'charge']), pour.id, ['tilt', 'charge']);
    const copies = ['copy', 'copy 2'].map((word) => {
      const copy = twice.cells.find(({ name }) => name === `${pour.name} ${word}`);
      if (copy?.kind !== 'pour') throw new Error(`no ${word}`);
      return copy;
    });
    const named = (id: string | null) => twice.cells.find((cell) => cell.id === id)!;
    expect(copies.map(({ tilt }) => named(tilt).name)).toEqual(['Tilt copy', 'Tilt copy 2']);
    expect(copies.map(({ charge }) => named(charge).name)).toEqual(['Charge copy', 'Charge copy 2']);
    for (const { tilt, charge, section, metal } of copies) {
      expect(named(charge)).toMatchObject({ tilt, section, metal });
      expect([section, metal]).toEqual([pour.section, pour.metal]);
    }
    const tilt = named(copies[0]!.tilt);
    if (tilt.kind !== 'tilt') throw new Error('no tilt');
    const changed = replaceCell(twice, { ...tilt, tilt: { ...tilt.tilt, start: 0.3 } });
    const planOf = (of: Book, id: string) => {
      const evaluation = evaluateBook(of).get(id);
      return evaluation?.state === 'needs a run' ? evaluation.plan : null;
    };
    expect(planOf(changed, copies[0]!.id)?.tilt.start).toBe(0.3);
    for (const id of [pour.id, copies[1]!.id]) expect(planOf(changed, id)).toEqual(planOf(twice, id));
  });

  it('copies a pour for another metal, with metal and charge of its own and the same volume in whatever metal', () => {
    const pour = firstOf(book, 'pour');
    const byMass = replaceCell(book, { ...firstOf(book, 'charge'), charge: { by: 'mass', mass: 0.7 } });
    const changed = copyForMetal(byMass, pour.id);
    const copy = changed.cells.find((cell) => cell.name === `${pour.name} copy`);
    if (copy?.kind !== 'pour') throw new Error('no copy');
    expect([copy.section, copy.tilt]).toEqual([pour.section, pour.tilt]);
    const metal = changed.cells.find((cell) => cell.id === copy.metal);
    const charge = changed.cells.find((cell) => cell.id === copy.charge);
    if (metal?.kind !== 'metal' || charge?.kind !== 'charge') throw new Error('no copies of its inputs');
    expect(metal.id).not.toBe(pour.metal);
    expect(charge.metal).toBe(metal.id);
    const bronze = replaceCell(changed, { ...metal, metal: metalNamed('aluminium bronze')! });
    const volumeOf = (id: string) => {
      const evaluation = evaluateBook(bronze).get(id);
      if (evaluation?.state !== 'needs a run') throw new Error(`${id} is not in order`);
      return evaluation.plan.volume;
    };
    expect(volumeOf(copy.id) / volumeOf(pour.id)).toBeCloseTo(1, 6);
  });

  it('copies a cell behind itself with a name and id of its own', () => {
    const changed = copyCell(copyCell(book, 'tilt-1'), 'tilt-1');
    expect(ids(changed).slice(3, 6)).toEqual(['tilt-1', 'tilt-3', 'tilt-2']);
    expect(changed.cells.slice(3, 6).map((cell) => cell.name)).toEqual(['Tilt', 'Tilt copy 2', 'Tilt copy']);
    expect(firstOf(changed, 'pour').tilt).toBe('tilt-1');
  });

  it('renames, but not to nothing', () => {
    expect(renameCell(book, 'tilt-1', ' Slow tilt ').cells[3]!.name).toBe('Slow tilt');
    expect(renameCell(book, 'tilt-1', '  ')).toBe(book);
    expect(renameCell(book, 'gone', 'x')).toBe(book);
  });

  it('moves as far as there is room', () => {
    expect(ids(moveCell(book, 'metal-1', -1)).slice(0, 3)).toEqual(['note-1', 'metal-1', 'section-1']);
    expect(ids(moveCell(book, 'metal-1', -9))[0]).toBe('metal-1');
    expect(ids(moveCellTo(book, 'note-1', 99)).at(-1)).toBe('note-1');
    expect(moveCell(book, 'note-1', -1)).toBe(book);
  });

  it('deletes a cell and every mention of it', () => {
    const changed = deleteCell(deleteCell(book, 'charge-1'), 'pour-2');
    expect(firstOf(changed, 'pour').charge).toBeNull();
    expect(firstOf(changed, 'compare').pours).toEqual(['pour-1']);
    expect(deleteCell(book, 'gone')).toBe(book);
  });

  it('does not touch the book it was given', () => {
    const before = structuredClone(book);
    deleteCell(addCell(moveCell(book, 'pour-1', -3), newCell('note', book), 0), 'tilt-1');
    expect(book).toEqual(before);
  });

  it('never gives an id or a name twice', () => {
    expect(freeId(deleteCell(book, 'pour-1'), 'pour')).toBe('pour-1');
    expect(freeId(book, 'pour')).toBe('pour-3');
    expect(freeId(book, 'shop card')).toBe('shop-card-1');
    expect(freeName(book, 'Pour')).toBe('Pour 3');
    expect(freeName(book, 'Sill')).toBe('Sill');
  });
});
