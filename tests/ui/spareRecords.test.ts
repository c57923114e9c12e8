import { expect, test } from 'vitest';
import type { RecordNote } from '$src/ui/cupboard';
import { spareRecords } from '$src/ui/pour/spareRecords';

const notes = (entries: readonly [key: string, at: number, bytes: number][]): Map<string, RecordNote> =>
  new Map(entries.map(([key, at, bytes]) => [key, { at, bytes }]));

test('what fits is kept', () => {
  expect(
    spareRecords(
      notes([
        ['v2 a', 1, 40],
        ['v2 b', 2, 60],
      ]),
      'v2',
      100,
    ),
  ).toEqual([]);
});

test('the ones longest unused go first', () => {
  expect(
    spareRecords(
      notes([
        ['v2 a', 3, 60],
        ['v2 b', 1, 30],
        ['v2 c', 2, 30],
      ]),
      'v2',
      100,
    ),
  ).toEqual(['v2 b']);
});

test('records of another version go before any that can be used', () => {
  expect(
    spareRecords(
      notes([
        ['v1 a', 9, 1],
        ['v2 a', 1, 90],
        ['v21 a', 9, 1],
      ]),
      'v2',
      100,
    ),
  ).toEqual(['v1 a', 'v21 a']);
});
