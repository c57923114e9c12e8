import { describe, expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import { withPourAt, withPourSetTo } from '$src/cells/pourAt';
import { USUAL_LADLING } from '$src/core/heat/ladling';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { fromCelsius, fromDegrees, fromMillimetres } from '$src/core/units';
import { planAt } from '$src/report/study/planAt';
import { sampleBook } from '../book/sample';
import { planOf } from '../study/samplePlan';

const book = sampleBook();
const base = planOf(book, 'pour-1');

function pointAt(values: Record<string, number>) {
  const at = planAt(base, values);
  if ('refused' in at) throw new Error(at.refused.reason);
  return { base, values, plan: at.plan };
}

const POINTS: readonly Record<string, number>[] = [
  { 'tilt.time': 6, 'tilt.start': fromDegrees(20) },
  { 'basin.length': fromMillimetres(170), 'charge.mass': 0.55 },
  { 'metal.contactAngle': fromDegrees(150), 'heat.metal': fromCelsius(700) },
  { 'heat.die': fromCelsius(300), 'heat.transfer': 900 },
];

/**
 * Figures of the plan to ten digits: mass and volume are each other's quotient. What the section says of its coats is
 * in the plan's heat as well.
 */
const rounded = (plan: PourPlan): unknown =>
  JSON.parse(
    JSON.stringify(withoutCoats(plan), (_, value) =>
      typeof value === 'number' ? Number(value.toPrecision(10)) : value,
    ),
  );

const withoutCoats = (plan: PourPlan): PourPlan => {
  const regions = plan.section.regions.map(({ name, end, width }) => ({ name, end, width }));
  return { ...plan, section: { ...plan.section, regions } };
};

const planIn = (changed: Book, id: string) => rounded(planOf(changed, id));

describe('a point of a study in the book', () => {
  it.each(POINTS)('as a pour of its own has the plan of the point: %j', (values) => {
    const point = pointAt(values);
    const { book: grown, id } = withPourAt(book, 'pour-1', point, 'a point');
    expect(planIn(grown, id)).toEqual(rounded(point.plan));
    expect(grown.cells.slice(0, book.cells.length)).toEqual(book.cells);
    expect([...evaluateBook(grown).values()].filter(({ state }) => state === 'wrong input')).toEqual([]);
  });

  it.each(POINTS)('set into the pour gives it that plan: %j', (values) => {
    const point = pointAt(values);
    expect(planIn(withPourSetTo(book, 'pour-1', point), 'pour-1')).toEqual(rounded(point.plan));
  });

  it('takes a charge along that is reckoned in its own section and tilt, and weighs the same', () => {
    const values = { 'basin.length': fromMillimetres(170), 'tilt.start': fromDegrees(20) };
    const { book: grown, id } = withPourAt(book, 'pour-1', pointAt(values), 'a point');
    const find = (wanted: string | null) => grown.cells.find((cell) => cell.id === wanted);
    const pour = find(id);
    if (pour?.kind !== 'pour') throw new Error('no pour');
    const charge = find(pour.charge);
    const before = find('charge-1');
    if (charge?.kind !== 'charge' || before?.kind !== 'charge') throw new Error('no charge');
    expect([charge.section, charge.tilt]).toEqual([pour.section, pour.tilt]);
    expect(charge.section).not.toBe(before.section);
    expect(planOf(grown, id).volume).toBeCloseTo(base.volume, 12);
  });

  it('ladles what stays behind as skull and dross besides', () => {
    const ladled: Book = {
      ...book,
      cells: book.cells.map((cell) =>
        cell.kind === 'charge' ? { ...cell, ladling: { ...USUAL_LADLING, skullShare: 0.05 } } : cell,
      ),
    };
    const from = planOf(ladled, 'pour-1');
    const at = planAt(from, { 'charge.mass': 0.55 });
    if ('refused' in at) throw new Error(at.refused.reason);
    const point = { base: from, values: { 'charge.mass': 0.55 }, plan: at.plan };
    const { book: grown, id } = withPourAt(ladled, 'pour-1', point, 'a point');
    expect(planOf(grown, id).volume).toBeCloseTo(at.plan.volume, 12);
  });

  it('takes a cell of its own only for what differs', () => {
    const { book: grown } = withPourAt(book, 'pour-1', pointAt({ 'tilt.time': 6 }), 'a point');
    expect(grown.cells.slice(book.cells.length).map(({ kind }) => kind)).toEqual(['tilt', 'charge', 'pour']);
    expect(planHash(planOf(grown, 'pour-1'))).toBe(planHash(base));
  });
});
