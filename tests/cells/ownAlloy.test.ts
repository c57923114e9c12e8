import { describe, expect, it } from 'vitest';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { copyForMetal } from '$src/cells/copyForMetal';
import { replaceCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import { alloyName } from '$src/cells/metalName';
import { USUAL_LADLING } from '$src/core/heat/ladling';
import { metalNamed } from '$src/core/metal/metals';
import type { OwnThermal } from '$src/core/metal/thermal';
import { fromCelsius, toCelsius } from '$src/core/units';
import { firstOf, sampleBook } from '../book/sample';

const typed = { source: 'Typed in by you', confidence: 'yours' } as const;
const book = sampleBook();
const metal = firstOf(book, 'metal');
const pour = firstOf(book, 'pour');
const THERMAL: OwnThermal = {
  liquidus: { value: fromCelsius(600), ...typed },
  dieRange: { low: fromCelsius(200), high: fromCelsius(260), ...typed },
};
const withOwn = (thermal: OwnThermal) => replaceCell(book, { ...metal, metal: { ...metal.metal, thermal } });

const planIn = (of: typeof book, id = pour.id) => {
  const evaluation = evaluateBook(of).get(id)!;
  if (!('plan' in evaluation)) throw new Error(`${id} is ${evaluation.state}`);
  return evaluation;
};

describe('a book with an alloy of one’s own', () => {
  it('is read as it was written, with what was typed alone, and one without needs no more than before', () => {
    const own = withOwn(THERMAL);
    expect(readBook(writeBook(own))).toEqual({ book: own });
    expect(writeBook(book)).not.toContain('"thermal"');
    expect(planIn(own).planHash).not.toBe(planIn(book).planHash);
  });

  it.each([
    ['a property nobody knows', { melting: { value: 600, ...typed } }],
    ['a bare number', { liquidus: 873 }],
    ['a range without an end', { dieRange: { low: 473, ...typed } }],
  ])('is refused with %s', (_, thermal) => {
    expect(readBook(writeBook(withOwn(thermal as OwnThermal)))).toHaveProperty('issues');
  });

  it('pours with it: freezing, lap and the die that nobody typed', () => {
    const { heat } = planIn(withOwn(THERMAL)).plan;
    expect(heat!.freezing.liquidus).toBe(fromCelsius(600));
    expect(heat!.lapTemperature).toBe(fromCelsius(600));
    expect(toCelsius(heat!.regions[0]!.dieTemperature)).toBeCloseTo(230, 9);
    expect(heat!.own!.dieRange).toEqual({ low: fromCelsius(200), high: fromCelsius(260) });
  });

  it('is wrong at its own cell where what was typed cannot be, and its pours wait for it', () => {
    const evaluations = evaluateBook(withOwn({ solidus: { value: fromCelsius(650), ...typed } }));
    expect(evaluations.get(metal.id)).toMatchObject({
      state: 'wrong input',
      issues: [{ path: 'thermal.solidus.value' }],
    });
    expect(evaluations.get(pour.id)).toMatchObject({ state: 'blocked' });
  });

  it('keeps it in a copy of the pour for another metal, until that is chosen', () => {
    const changed = copyForMetal(withOwn(THERMAL), pour.id);
    const copy = changed.cells.find((cell) => cell.name === `${pour.name} copy`)!;
    if (copy.kind !== 'pour') throw new Error('no copy');
    const copied = changed.cells.find((cell) => cell.id === copy.metal)!;
    expect(copied).toMatchObject({ metal: { thermal: THERMAL } });
    expect(planIn(changed, copy.id).plan.heat).toEqual(planIn(changed).plan.heat);
    if (copied.kind !== 'metal') throw new Error('no metal');
    const bronze = replaceCell(changed, { ...copied, metal: metalNamed('aluminium bronze')! });
    const { regions, own } = planIn(bronze, copy.id).plan.heat!;
    expect(toCelsius(regions[0]!.dieTemperature)).toBeCloseTo(250, 9);
    expect(own).toBeUndefined();
  });

  it('loses more of its heat in the basin, the more its surface radiates', () => {
    const charge = firstOf(book, 'charge');
    const startOf = (thermal: OwnThermal) =>
      planIn(replaceCell(withOwn(thermal), { ...charge, ladling: USUAL_LADLING })).plan.heat!
        .startTemperature;
    const dull = startOf({ emissivity: { value: 0.9, ...typed } });
    expect(dull).toBeLessThan(startOf({ emissivity: { value: 0.2, ...typed } }));
    expect(startOf({ emissivity: { value: 0.2, ...typed } })).toBe(
      startOf({ contraction: { value: 0.012, ...typed } }),
    );
  });

  it('is called by the name of its cell, or as changed', () => {
    const own = { ...metal.metal, thermal: THERMAL };
    expect(alloyName(metal)).toBe('A356 (Al-7Si-0.3Mg)');
    expect(alloyName({ ...metal, metal: own })).toBe('A356 (Al-7Si-0.3Mg), changed');
    expect(alloyName({ ...metal, name: 'Our 7 % alloy', metal: own })).toBe('Our 7 % alloy');
  });
});
