import { describe, expect, test } from 'vitest';
import { addCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, ChargeCell, SectionCell } from '$src/cells/kinds';
import { newCell } from '$src/cells/newCell';
import { basinCapacity } from '$src/core/level/basinCapacity';
import { DEFAULT_COMPUTATION, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { flushBasin, hingeArm, pitBehindSill, taperedLever, thinWall } from '$src/core/section/shapes';
import { STARTING_SHAPES } from '$src/core/section/startingShapes';
import { fromDegrees } from '$src/core/units';
import { feederShortage, isFeederJudged } from '$src/report/feederShortage';
import { verdict } from '$src/report/verdict';
import { firstOf, sampleBook } from '../book/sample';
import { computed } from '../books/computed';
import { planOf } from '../books/planOf';

/** The sample's section, metal and tilt alone, with another section and another start of the tilt. */
function shopWith(section: Section, start: number): Book {
  const sample = sampleBook();
  const tilt = firstOf(sample, 'tilt');
  return {
    ...sample,
    cells: [
      { ...firstOf(sample, 'section'), section } as SectionCell,
      firstOf(sample, 'metal'),
      { ...tilt, tilt: { ...tilt.tilt, start } },
    ],
  };
}

const shapes = { flushBasin, pitBehindSill, hingeArm, taperedLever, thinWall };

describe('a new charge', () => {
  const cases = Object.entries(shapes).flatMap(([name, make]) =>
    [0, 15, 30].map((degrees) => [name, degrees, make()] as const),
  );
  test.each(cases)('%s, started at %d°: stands in its basin, if any charge can', (name, degrees, section) => {
    const book = shopWith(section, fromDegrees(degrees));
    const charge = newCell('charge', book) as ChargeCell;
    const capacity = basinCapacity(section, fromDegrees(degrees));
    // Level, a flush floor holds nothing back: there the first of all charges is taken, whatever it comes to.
    if (capacity === 0) {
      expect([name, degrees]).toEqual([expect.not.stringMatching('pitBehindSill'), 0]);
      expect(charge.charge).toEqual({ by: 'head', head: 0.05 });
      return;
    }
    const evaluation = evaluateBook(addCell(book, charge)).get(charge.id);
    if (evaluation?.state !== 'ready' || !('charge' in evaluation))
      throw new Error('The charge is not in order.');
    expect(evaluation.charge.volume).toBeGreaterThan(0);
    expect(evaluation.charge.volume).toBeLessThanOrEqual(capacity);
  });

  test('in a pit that holds no head it is filled to just under the lip', () => {
    const charge = newCell('charge', shopWith(pitBehindSill(), 0)) as ChargeCell;
    expect(charge.charge).toEqual({ by: 'fill level', fromLip: -0.001 });
  });

  const fillable = cases.filter(
    ([, degrees, section]) => basinCapacity(section, fromDegrees(degrees)) > 1.1 * cavityVolume(section),
  );
  test.each(fillable)(
    '%s, started at %d°: fills the die, where the basin holds so much',
    (_, degrees, section) => {
      const book = shopWith(section, fromDegrees(degrees));
      const charge = newCell('charge', book) as ChargeCell;
      const evaluation = evaluateBook(addCell(book, charge)).get(charge.id);
      if (evaluation?.state !== 'ready' || !('charge' in evaluation))
        throw new Error('The charge is not in order.');
      expect(evaluation.charge.volume).toBeGreaterThanOrEqual(cavityVolume(section));
    },
  );

  test('fills the die from the pit behind a sill as it comes, too', () => {
    expect(fillable.map(([name]) => name)).toContain('pitBehindSill');
  });

  test('in a new book it stands below the lip, where a mark can be read', () => {
    const book = sampleBook();
    const evaluation = evaluateBook(book).get(firstOf(book, 'charge').id);
    if (evaluation?.state !== 'ready' || !('charge' in evaluation))
      throw new Error('The charge is not in order.');
    expect(evaluation.charge.startLevel.held).toBeLessThan(0);
  });
});

test('the first pour of a new book fills its die, with no gas held', () => {
  const plan = planOf(sampleBook(), 'pour-1', 60);
  const { outcome, figures } = computed(plan);
  expect(outcome.kind).toBe('filled and quiet');
  expect(figures.filledTime).toBeGreaterThan(0);
});

test.each([PREVIEW_MESH_CELLS, DEFAULT_COMPUTATION.meshCells])(
  'the first pour of a new book is sound, and its feeder feeds it, on a mesh of %d cells and at rates near its own',
  (meshCells) => {
    const plan = planOf(sampleBook(), 'pour-1');
    const { tilt } = plan;
    if (tilt.kind !== 'steady') throw new Error('A new tilt is steady.');
    for (const by of meshCells === PREVIEW_MESH_CELLS ? [0.9, 1, 1.1] : [1]) {
      const near = {
        ...plan,
        tilt: { ...tilt, rate: tilt.rate * by },
        computation: { ...plan.computation, meshCells },
      };
      const record = computed(near);
      expect(verdict(record).kind).toBe('sound');
      expect(feederShortage(record)).toBeNull();
    }
  },
);

describe('a starting shape', () => {
  const pourOf = (section: Section) => {
    const sample = sampleBook();
    const shop = shopWith(section, fromDegrees(30));
    const charge = newCell('charge', shop) as ChargeCell;
    const book = addCell(shop, charge);
    return planOf(
      { ...book, cells: [...book.cells, { ...firstOf(sample, 'pour'), charge: charge.id }] },
      'pour-1',
      PREVIEW_MESH_CELLS,
    );
  };
  const good = STARTING_SHAPES.filter(({ isBadExample }) => !isBadExample);

  test.each(good)('$name: its first charge fills the die, under the lip, and feeds it', ({ make }) => {
    const plan = pourOf(make());
    const record = computed(plan);
    expect(plan.volume).toBeLessThan(basinCapacity(plan.section, plan.tilt.start));
    expect(record.figures.filledTime).toBeGreaterThan(0);
    expect(isFeederJudged(record)).toBe(true);
    expect(feederShortage(record)).toBeNull();
  });

  test('that cannot be fed is called a bad example, and says why', () => {
    const bad = STARTING_SHAPES.filter(({ isBadExample }) => isBadExample);
    expect(bad.length).toBeGreaterThan(0);
    for (const { name, meaning, make } of bad) {
      expect(feederShortage(computed(pourOf(make())))?.inShort).toBe('no metal is left to feed it');
      expect([name, meaning]).toEqual([
        expect.stringMatching(/^bad example: /),
        expect.stringContaining('keeps no feeder'),
      ]);
    }
  });
});
