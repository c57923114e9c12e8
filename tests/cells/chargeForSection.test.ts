import { expect, test } from 'vitest';
import { foreignCharge, withOwnCharge } from '$src/cells/chargeForSection';
import { addCell, replaceCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, ChargeBy, PourCell, SectionCell } from '$src/cells/kinds';
import { basinCapacity } from '$src/core/level/basinCapacity';
import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { FLUSH_BASIN, flushBasin, taperedLever } from '$src/core/section/shapes';
import { firstOf, sampleBook } from '../book/sample';

/** The sample's pour with another section, its charge left as it was and told this way. */
function switched(section: Section, charge: ChargeBy): { book: Book; pour: PourCell; other: SectionCell } {
  const sample = sampleBook();
  const other = { ...firstOf(sample, 'section'), id: 'section-2', name: 'Lever', section };
  const pour = { ...firstOf(sample, 'pour'), section: other.id };
  const given = replaceCell(sample, { ...firstOf(sample, 'charge'), charge });
  return { book: replaceCell(addCell(given, other), pour), pour, other };
}

const pourIn = (book: Book): PourCell => firstOf(book, 'pour') as PourCell;

test('a charge of another section is told apart from one of its own', () => {
  const { book, pour, other } = switched(taperedLever(), { by: 'mass', mass: 0.5 });
  expect(foreignCharge(book, pour)).toEqual({ charge: firstOf(book, 'charge'), section: other });
  expect(foreignCharge(sampleBook(), pourIn(sampleBook()))).toBeNull();
});

test('a charge for the section that is poured keeps its way of being told where it suits, and the old one stays', () => {
  const level = { by: 'fill level', fromLip: -0.004 } as const;
  const { book, pour, other } = switched(taperedLever(), level);
  const mended = withOwnCharge(book, pour.id);
  const charge = mended.cells.find(({ id }) => id === pourIn(mended).charge);
  expect(charge).toMatchObject({
    kind: 'charge',
    name: 'Charge for Lever',
    section: other.id,
    charge: level,
  });
  expect(foreignCharge(mended, pourIn(mended))).toBeNull();
  expect(firstOf(mended, 'charge')).toEqual(firstOf(book, 'charge'));
});

test('a charge that does not fill the other die begins anew', () => {
  const section = flushBasin({ ...FLUSH_BASIN, basinWidth: 0.09 });
  const { book, pour } = switched(section, { by: 'mass', mass: 0.2 });
  const mended = withOwnCharge(book, pour.id);
  const evaluation = evaluateBook(mended).get(pour.id);
  if (evaluation?.state !== 'needs a run') throw new Error(`The pour is ${evaluation?.state}.`);
  const { volume, tilt } = evaluation.plan;
  expect(volume).toBeGreaterThanOrEqual(cavityVolume(section));
  expect(volume).toBeLessThanOrEqual(basinCapacity(section, tilt.start));
});
