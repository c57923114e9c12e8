import { describe, expect, test } from 'vitest';
import { replaceCell } from '$src/cells/edit';
import { type ChargeValue, evaluateBook } from '$src/cells/evaluate';
import type { ChargeBy } from '$src/cells/kinds';
import { fromInches, fromMillimetres, METRIC, toInches, toMillimetres, toPounds } from '$src/core/units';
import { chargeAs, typedCharge } from '$src/ui/cells/chargeAs';
import { firstOf, sampleBook } from '../../book/sample';

const INCHES = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
const book = sampleBook();
const cell = firstOf(book, 'charge');

function worth(charge: ChargeBy): ChargeValue {
  const evaluation = evaluateBook(replaceCell(book, { ...cell, charge })).get(cell.id)!;
  if (!('charge' in evaluation)) throw new Error(evaluation.state);
  return evaluation.charge;
}

const typed: ChargeBy = { by: 'mass', mass: 0.61234 };
const isWhole = (steps: number): boolean => Math.abs(steps - Math.round(steps)) < 1e-9;

describe('a charge told another way', () => {
  test('is in tenths of a millimetre, and in whole grams', () => {
    const level = chargeAs('fill level', typed, worth(typed), METRIC);
    if (level.by !== 'fill level') throw new Error(level.by);
    expect(isWhole(toMillimetres(level.fromLip) * 10)).toBe(true);
    expect(Math.abs(level.fromLip - worth(typed).fromLip!)).toBeLessThanOrEqual(fromMillimetres(0.05001));
    const head = chargeAs('head', typed, worth(typed), METRIC);
    if (head.by !== 'head') throw new Error(head.by);
    expect(isWhole(toMillimetres(head.head) * 10)).toBe(true);
    const mass = chargeAs('mass', level, worth(level), METRIC);
    if (mass.by !== 'mass') throw new Error(mass.by);
    expect(mass.mass).toBe(Number(mass.mass.toFixed(3)));
  });

  test('is in thousandths of an inch and of a pound where those are shown', () => {
    const head = chargeAs('head', typed, worth(typed), INCHES);
    if (head.by !== 'head') throw new Error(head.by);
    expect(isWhole(toInches(head.head) * 1000)).toBe(true);
    expect(Math.abs(head.head - worth(typed).head!)).toBeLessThanOrEqual(fromInches(0.000501));
    const mass = chargeAs('mass', head, worth(head), INCHES);
    if (mass.by !== 'mass') throw new Error(mass.by);
    expect(isWhole(toPounds(mass.mass) * 1000)).toBe(true);
  });

  test('in the way it is given already is left to the last digit', () => {
    expect(chargeAs('mass', typed, worth(typed), METRIC)).toBe(typed);
  });

  test('is exact where the rounded one would run over', () => {
    const most = worth(typed).fromLip!;
    const stands = (charge: ChargeBy) => charge.by === 'fill level' && charge.fromLip === most;
    expect(chargeAs('fill level', typed, worth(typed), METRIC, stands)).toEqual({
      by: 'fill level',
      fromLip: most,
    });
  });

  test('and back again is what was typed, unless it was changed in between', () => {
    const told: ChargeBy = { by: 'head', head: 0.0312 };
    expect(typedCharge({ by: 'head', head: 0.0312 }, { typed, told })).toBe(typed);
    const changed: ChargeBy = { by: 'head', head: 0.04 };
    expect(typedCharge(changed, { typed, told })).toBe(changed);
  });
});
