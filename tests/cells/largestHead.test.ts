import { expect, test } from 'vitest';
import { chargeValue } from '$src/cells/chargeValue';
import { metalNamed } from '$src/core/metal/metals';
import { hingeArm, pitBehindSill } from '$src/core/section/shapes';
import { fromDegrees, fromMillimetres } from '$src/core/units';

const at = (section: Parameters<typeof chargeValue>[0], millimetres: number) =>
  chargeValue(
    section,
    metalNamed('A356')!,
    fromDegrees(30),
    fromDegrees(-90),
    { by: 'head', head: fromMillimetres(millimetres) },
    null,
  );

test('a head that no charge leaves is answered with the largest that one does', () => {
  const result = at(hingeArm(), 70);
  if (!('issues' in result)) throw new Error('A head of 70 mm goes.');
  const most = Number(
    /^The most that goes here is (\d+) mm: ask for no more/.exec(result.issues[0]!.remedy)![1],
  );
  expect(Object.getOwnPropertyDescriptor(result.issues[0], 'remedy'), 'plain data').toHaveProperty('value');
  expect(at(hingeArm(), most)).toHaveProperty('value');
  expect(at(hingeArm(), most + 1)).toHaveProperty('issues');
});

test('a basin without a roof keeps no head at all, and says what to give instead', () => {
  const result = at(pitBehindSill(), 50);
  if (!('issues' in result)) throw new Error('A head of 50 mm goes.');
  expect(result.issues[0]!.remedy).toMatch(/^No head goes here: give a mass or a fill level/);
});

test.each([-5, -0.1])('a head of %s mm is answered with those that go', (millimetres) => {
  const result = at(hingeArm(), millimetres);
  if (!('issues' in result)) throw new Error('A head below the mouth goes.');
  const most = Number(/^Type 0 to (\d+) mm\.$/.exec(result.issues[0]!.remedy)![1]);
  for (const goes of [0, 1, most / 2, most]) expect(at(hingeArm(), goes)).toHaveProperty('value');
  expect(at(hingeArm(), most + 1)).toHaveProperty('issues');
});
