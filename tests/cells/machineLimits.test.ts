import { describe, expect, test } from 'vitest';
import { addCell } from '$src/cells/edit';
import type { Book, TiltCell } from '$src/cells/kinds';
import { tiltsOfOtherMachines, withLimits } from '$src/cells/machineLimits';
import { newCell } from '$src/cells/newCell';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import { fromDegrees } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';

const LEVEL_ONLY = { ...WIDEST_LIMITS, highestStart: 0 };
const tiltsOf = (book: Book): TiltCell[] => book.cells.filter((cell) => cell.kind === 'tilt');

function levelShop(): Book {
  const book = sampleBook();
  return withLimits(book, [firstOf(book, 'tilt').id], LEVEL_ONLY);
}

describe('one machine in a shop', () => {
  test('a new tilt takes the limits of the nearest, and keeps within them', () => {
    const added = newCell('tilt', levelShop());
    if (added.kind !== 'tilt' || added.tilt.kind !== 'steady') throw new Error('A new tilt is steady.');
    expect(added.tilt.limits).toEqual(LEVEL_ONLY);
    expect(added.tilt.start).toBe(0);
  });

  test('the first tilt of a book starts uphill', () => {
    const added = newCell('tilt', { title: '', casting: '', cells: [] });
    if (added.kind !== 'tilt' || added.tilt.kind !== 'steady') throw new Error('A new tilt is steady.');
    expect(added.tilt.limits).toEqual({ ...WIDEST_LIMITS, quickest: fromDegrees(45) });
    expect(added.tilt.start).toBeCloseTo(fromDegrees(30), 12);
  });

  test('tilts with other limits are found and given the same; locked ones stay', () => {
    const other = { ...firstOf(sampleBook(), 'tilt'), id: 'other', name: 'Other' };
    const locked = { ...other, id: 'locked', locked: true };
    const book = [other, locked].reduce<Book>((so, cell) => addCell(so, cell), levelShop());
    const found = tiltsOfOtherMachines(tiltsOf(book), LEVEL_ONLY);
    expect(found.map(({ id }) => id)).toEqual(['other']);
    const after = withLimits(book, ['other'], LEVEL_ONLY);
    expect(tiltsOf(after).map(({ tilt }) => tilt.limits.highestStart)).toEqual([
      0,
      0,
      WIDEST_LIMITS.highestStart,
    ]);
    expect(tiltsOfOtherMachines(tiltsOf(after), LEVEL_ONLY)).toEqual([]);
  });
});
