import { expect, test } from 'vitest';
import { METALS } from '$src/core/metal/metals';
import { fromFahrenheit, METRIC } from '$src/core/units';
import { sourcedAs } from '$src/ui/cells/sourcedAs';
import { quantityOf, quantityText } from '$src/ui/inputs/quantity';
import { parseQuantity } from '$src/ui/inputs/readQuantity';

const US = { length: 'in', mass: 'lb', temperature: 'degF' } as const;

test("what reads as the value of the source keeps its source, in any units; another is the user's", () => {
  for (const metal of METALS)
    for (const units of [METRIC, US])
      for (const [field, kind] of [
        ['density', 'density'],
        ['pouringTemperature', 'temperature'],
        ['surfaceTension', 'surface tension'],
      ] as const) {
        const [original, quantity] = [metal[field], quantityOf(kind, units)];
        const retyped = parseQuantity(quantityText(original.value, quantity), quantity)!;
        expect(sourcedAs(original, retyped, quantity)).toBe(original);
        const other = sourcedAs(original, original.value * 1.01, quantity);
        expect(other).toEqual({
          value: original.value * 1.01,
          source: 'Typed in by you',
          confidence: 'yours',
        });
      }
});

test("a metal of one's own has no source to keep", () => {
  const quantity = quantityOf('temperature', US);
  expect(sourcedAs(undefined, fromFahrenheit(1300), quantity).confidence).toBe('yours');
});
