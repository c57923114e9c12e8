import { expect, test } from 'vitest';
import type { Book, ChargeCell, SectionCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { noHeadWords } from '$src/cells/noHead';
import { basinCapacity } from '$src/core/level/basinCapacity';
import { volumeFromHead } from '$src/core/level/head';
import { hingeArm, pitBehindSill } from '$src/core/section/shapes';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';

const LEVEL = 0;
const UPHILL = fromDegrees(30);
const ON_END = fromDegrees(-90);

test('a pit that keeps no head says so, where, and what to do for one', () => {
  expect(noHeadWords(pitBehindSill(), LEVEL, ON_END)).toBe(
    'None stands over the mouth at −90°: the metal would stand over a rim, or run out on the way. To ask for a head, roof more of the basin.',
  );
});

test('where a head that feeds can be asked for nothing is said', () => {
  expect(noHeadWords(hingeArm(), UPHILL, ON_END)).toBeNull();
});

test('a basin that is too small for the charge of a head says that', () => {
  const start = fromDegrees(3);
  const words = noHeadWords(hingeArm(), start, ON_END);
  const [, head] =
    /^At 3° the basin cannot hold what a head of (\d+) mm takes\. To ask for a head, make it deeper, longer or wider\.$/.exec(
      words!,
    )!;
  const volume = volumeFromHead(hingeArm(), start, ON_END, fromMillimetres(Number(head)));
  expect(volume).toBeGreaterThan(basinCapacity(hingeArm(), start));
});

test.each([
  ['a pit behind a sill, level', pitBehindSill(), LEVEL],
  ['a hinge arm, nearly level', hingeArm(), fromDegrees(3)],
] as const)('a new charge of %s is told by its level, and the words say why', (_, section, start) => {
  const sample = sampleBook();
  const tilt = firstOf(sample, 'tilt');
  const book: Book = {
    ...sample,
    cells: [
      { ...firstOf(sample, 'section'), section } as SectionCell,
      firstOf(sample, 'metal'),
      { ...tilt, tilt: { ...tilt.tilt, start } },
    ],
  };
  const charge = newCell('charge', book) as ChargeCell;
  expect(charge.charge.by).toBe('fill level');
  expect(noHeadWords(section, start, ON_END)).toContain('To ask for a head, ');
});
