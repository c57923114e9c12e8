import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  AREA,
  fromInches,
  fromPounds,
  LENGTH,
  MASS,
  type Measure,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  toFahrenheit,
  VOLUME,
} from '$src/core/units';

/**
 * Exact by definition: NIST Special Publication 811 (2008), appendix B: inch 2.54 E-02 m, pound (avoirdupois)
 * 4.535 923 7 E-01 kg, degree Fahrenheit t/°C = (t/°F − 32)/1.8, square inch 6.4516 E-04 m², cubic inch
 * 1.638 706 4 E-05 m³.
 */
describe('factors of NIST SP 811, appendix B', () => {
  test('inch and pound', () => {
    expect(fromInches(1)).toBe(0.0254);
    expect(fromPounds(1)).toBe(0.45359237);
  });

  test('square and cubic inch', () => {
    expect(AREA.in.fromShown(1)).toBeCloseTo(6.4516e-4, 18);
    expect(VOLUME.in.fromShown(1)).toBeCloseTo(1.6387064e-5, 18);
  });

  test('fixed points of water and the point where both scales meet', () => {
    expect(toFahrenheit(273.15)).toBe(32);
    expect(toFahrenheit(373.15)).toBeCloseTo(212, 9);
    expect(toFahrenheit(233.15)).toBeCloseTo(-40, 9);
    expect(TEMPERATURE_DIFFERENCE.degF.toShown(5)).toBe(9);
  });
});

describe('there and back', () => {
  const all: readonly Measure[] = [LENGTH, AREA, VOLUME, MASS, TEMPERATURE, TEMPERATURE_DIFFERENCE].flatMap(
    (measures) => Object.values<Measure>(measures),
  );

  test.each(all)('$unit loses nothing that a double can hold', ({ toShown, fromShown }) => {
    fc.assert(
      fc.property(fc.double({ min: -3000, max: 3000, noNaN: true }), (shown) => {
        // Two roundings of at most half a last place each; temperatures carry the offset of their zero.
        const room = 4 * Number.EPSILON * Math.max(Math.abs(shown), 500);
        expect(Math.abs(toShown(fromShown(shown)) - shown)).toBeLessThanOrEqual(room);
      }),
      { seed: 3 },
    );
  });
});
