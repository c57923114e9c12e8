import { describe, expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book } from '$src/cells/kinds';
import { withPourAt, withPourSetTo } from '$src/cells/pourAt';
import { USUAL_LADLING } from '$src/core/heat/ladling';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { fromCelsius, fromDegrees, fromMillimetres, type PageUnits, toPounds } from '$src/core/units';
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

/** Half a gram, in cubic metres of this metal: what a mass written in whole grams may be off by. */
const HALF_A_GRAM = 0.0005 / base.liquid.density;

/** The plan of the pour is that of the point, but for the volume, which is that of whole grams. */
function expectPlan(plan: PourPlan, wanted: PourPlan): void {
  expect(rounded({ ...plan, volume: 0 })).toEqual(rounded({ ...wanted, volume: 0 }));
  expect(Math.abs(plan.volume - wanted.volume)).toBeLessThanOrEqual(HALF_A_GRAM * (1 + 1e-9));
  expect(plan.volume * plan.liquid.density * 1000).toBeCloseTo(
    Math.round(plan.volume * plan.liquid.density * 1000),
    6,
  );
}

describe('a point of a study in the book', () => {
  it.each(POINTS)('as a pour of its own has the plan of the point: %j', (values) => {
    const point = pointAt(values);
    const { book: grown, id } = withPourAt(book, 'pour-1', point, 'Pour window');
    expectPlan(planOf(grown, id), point.plan);
    expect(grown.cells.slice(0, book.cells.length)).toEqual(book.cells);
    expect([...evaluateBook(grown).values()].filter(({ state }) => state === 'wrong input')).toEqual([]);
  });

  it.each(POINTS)('set into the pour gives it that plan: %j', (values) => {
    const point = pointAt(values);
    expectPlan(planOf(withPourSetTo(book, 'pour-1', point), 'pour-1'), point.plan);
  });

  it('takes a charge along that is reckoned in its own section and tilt, and weighs the same', () => {
    const values = { 'basin.length': fromMillimetres(170), 'tilt.start': fromDegrees(20) };
    const { book: grown, id } = withPourAt(book, 'pour-1', pointAt(values), 'Pour window');
    const find = (wanted: string | null) => grown.cells.find((cell) => cell.id === wanted);
    const pour = find(id);
    if (pour?.kind !== 'pour') throw new Error('no pour');
    const charge = find(pour.charge);
    const before = find('charge-1');
    if (charge?.kind !== 'charge' || before?.kind !== 'charge') throw new Error('no charge');
    expect([charge.section, charge.tilt]).toEqual([pour.section, pour.tilt]);
    expect(charge.section).not.toBe(before.section);
    expect(Math.abs(planOf(grown, id).volume - base.volume)).toBeLessThanOrEqual(HALF_A_GRAM);
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
    const { book: grown, id } = withPourAt(ladled, 'pour-1', point, 'Pour window');
    expect(Math.abs(planOf(grown, id).volume - at.plan.volume)).toBeLessThanOrEqual(HALF_A_GRAM);
  });

  it('is written in grams, and in thousandths of a pound where the book counts in pounds', () => {
    const point = pointAt({ 'tilt.start': fromDegrees(20) });
    const massIn = (units?: PageUnits): number => {
      const counted: Book = units ? { ...book, units } : book;
      const { book: grown } = withPourAt(counted, 'pour-1', point, 'Pour window');
      const charge = grown.cells.findLast((cell) => cell.kind === 'charge');
      if (charge?.kind !== 'charge' || charge.charge.by !== 'mass') throw new Error('no mass');
      return charge.charge.mass;
    };
    expect(massIn()).toBe(Number(massIn().toFixed(3)));
    const pounds = toPounds(massIn({ length: 'in', mass: 'lb', temperature: 'degF' }));
    expect(pounds).toBeCloseTo(Number(pounds.toFixed(3)), 12);
  });

  it('is named after what differs, counted where such a name is taken', () => {
    const named = book.cells.map((cell) =>
      cell.id === 'pour-1' || cell.kind === 'charge' ? { ...cell, name: 'Filled to 6 mm under' } : cell,
    );
    const from = { ...book, cells: named };
    const first = withPourAt(from, 'pour-1', pointAt({ 'tilt.time': 6 }), '6 s').book;
    const second = withPourAt(first, 'pour-1', pointAt({ 'tilt.time': 6 }), '6 s').book;
    expect(second.cells.slice(book.cells.length).map(({ name }) => name)).toEqual([
      '6 s, tilt',
      '6 s, charge',
      '6 s',
      '6 s (2), tilt',
      '6 s (2), charge',
      '6 s (2)',
    ]);
  });

  it('keeps a mass that the study varied as it is', () => {
    const { book: grown } = withPourAt(book, 'pour-1', pointAt({ 'charge.mass': 0.54321 }), 'Pour window');
    const charge = grown.cells.findLast((cell) => cell.kind === 'charge');
    expect(charge?.kind === 'charge' && charge.charge).toEqual({ by: 'mass', mass: 0.54321 });
  });

  it('takes a cell of its own only for what differs', () => {
    const { book: grown } = withPourAt(book, 'pour-1', pointAt({ 'tilt.time': 6 }), 'Pour window');
    expect(grown.cells.slice(book.cells.length).map(({ kind }) => kind)).toEqual(['tilt', 'charge', 'pour']);
    expect(planHash(planOf(grown, 'pour-1'))).toBe(planHash(base));
  });
});
