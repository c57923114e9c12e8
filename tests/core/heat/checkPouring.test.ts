import { describe, expect, it, test } from 'vitest';
import { replaceCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import { checkPouring, pouringLimits } from '$src/core/heat/checkPouring';
import { thermalOf } from '$src/core/heat/thermalMetals';
import { METALS, metalNamed } from '$src/core/metal/metals';
import { fromCelsius } from '$src/core/units';
import { firstOf, sampleBook } from '../../book/sample';

const BRONZE = metalNamed('aluminium bronze')!;
const at = (value: number, metal = BRONZE) => ({
  ...metal,
  pouringTemperature: { ...metal.pouringTemperature, value },
});

describe('the pouring temperature of a metal', () => {
  it.each([0, 1.2, 20, 900, 1045])('is refused at %s °C for bronze, with the liquidus named', (celsius) => {
    const [issue, ...others] = checkPouring(at(fromCelsius(celsius)));
    expect(others).toEqual([]);
    expect(issue).toEqual({
      path: 'pouringTemperature.value',
      message: `At ${celsius} °C this metal is no liquid: its liquidus is 1045 °C.`,
      remedy: 'Give more than 1045 °C, at most 1480 °C; 1100 to 1180 °C is usual.',
    });
  });

  it.each([1045.1, 1100, 1300, 1480])('stands at %s °C for bronze', (celsius) => {
    expect(checkPouring(at(fromCelsius(celsius)))).toEqual([]);
  });

  it('is refused far above what is usual', () => {
    expect(checkPouring(at(fromCelsius(1481)))[0]!.message).toContain('far hotter');
  });

  it('holds for each metal of the book as it comes, and for its whole usual range', () => {
    for (const metal of METALS) {
      const { low, high } = thermalOf(metal.base)!.pouringRange;
      for (const value of [metal.pouringTemperature.value, low, high])
        expect(checkPouring(at(value, metal))).toEqual([]);
      expect(pouringLimits(metal)![0]).toBe(thermalOf(metal.base)!.liquidus);
    }
  });

  it('is not judged where nothing is known of the freezing', () => {
    expect(checkPouring({ ...at(fromCelsius(20)), base: 'water' })).toEqual([]);
  });
});

test('too cold a metal is wrong at its own cell, and the pour waits for it by name', () => {
  const book = sampleBook();
  const metal = firstOf(book, 'metal');
  const cold = replaceCell(book, { ...metal, metal: at(fromCelsius(500), metal.metal) });
  const evaluations = evaluateBook(cold);
  expect(evaluations.get(metal.id)).toMatchObject({
    state: 'wrong input',
    issues: [{ path: 'pouringTemperature.value' }],
  });
  const pour = cold.cells.find((cell) => cell.kind === 'pour' && cell.metal === metal.id)!;
  const waiting = evaluations.get(pour.id)!;
  expect(waiting).toMatchObject({ state: 'blocked' });
  expect(waiting.state === 'blocked' && waiting.reason).toContain(`“${metal.name}”`);
  expect(waiting.state === 'blocked' && waiting.by).toContain(metal.id);
});
