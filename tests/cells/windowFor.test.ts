import { expect, test } from 'vitest';
import { addCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import { withLimits } from '$src/cells/machineLimits';
import { newCell } from '$src/cells/newCell';
import { aroundPour, windowFor } from '$src/cells/windowFor';
import { DEFAULT_LIMITS } from '$src/core/tilt/range';
import { POUR_WINDOW } from '$src/report/study/pourWindow';
import { firstOf, sampleBook } from '../book/sample';

const book = sampleBook();
const pour = firstOf(book, 'pour').id;
const levelShop: Book = {
  ...withLimits(book, [firstOf(book, 'tilt').id], { ...DEFAULT_LIMITS, highestStart: 0 }),
};

test('a machine that starts uphill has its start angles tried', () => {
  expect(windowFor(book, pour)).toBe(POUR_WINDOW);
  expect(windowFor(book, null)).toBe(POUR_WINDOW);
});

test('one that can only start level has the lengths of its basin tried, and the study is in order', () => {
  const study = windowFor(levelShop, pour);
  expect(study.axes.map(({ setting }) => setting)).toEqual(['tilt.time', 'basin.length']);
  const level = levelShop.cells.map((cell) =>
    cell.kind === 'tilt' && cell.tilt.kind === 'steady'
      ? { ...cell, tilt: { ...cell.tilt, start: 0 } }
      : cell,
  );
  const cell = { ...newCell('study', levelShop), pour, study };
  if (cell.kind !== 'study') throw new Error('A study is a study.');
  const whole = addCell({ ...levelShop, cells: level }, cell);
  expect(evaluateBook(whole).get(cell.id)).toEqual({ state: 'ready' });
});

test('choosing the pour changes what a new study varies, and no other', () => {
  expect(aroundPour(levelShop, POUR_WINDOW, pour)).toEqual(windowFor(levelShop, pour));
  const own = { ...POUR_WINDOW, axes: [{ ...POUR_WINDOW.axes[0]!, to: 9 }] };
  expect(aroundPour(levelShop, own, pour)).toBe(own);
});
