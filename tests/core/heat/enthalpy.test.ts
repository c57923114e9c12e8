import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coolFor, coolingTime } from '$src/core/heat/cooling';
import {
  enthalpyAtSolidFraction,
  enthalpyOf,
  liquidEnthalpy,
  solidFractionOf,
  temperatureOf,
} from '$src/core/heat/enthalpy';
import type { Freezing } from '$src/core/heat/freezing';
import { implicitEnthalpy } from '$src/core/heat/loseHeat';

/** Any casting metal: range 0 to 200 K wide, zero included on purpose. */
const anyFreezing: fc.Arbitrary<Freezing> = fc
  .record({
    density: fc.double({ min: 1500, max: 9000, noNaN: true }),
    solidus: fc.double({ min: 600, max: 1400, noNaN: true }),
    range: fc.oneof(fc.constant(0), fc.double({ min: 0.1, max: 200, noNaN: true })),
    latentHeat: fc.double({ min: 1e5, max: 6e5, noNaN: true }),
    liquidHeat: fc.double({ min: 300, max: 1500, noNaN: true }),
    solidHeat: fc.double({ min: 300, max: 1500, noNaN: true }),
  })
  .map(({ range, solidus, ...rest }) => ({
    ...rest,
    solidus,
    liquidus: solidus + range,
    conductivity: 75,
    coherency: 0.25,
  }));
const anyTemperature = fc.double({ min: 400, max: 1700, noNaN: true });
const anyEnthalpy = fc.double({ min: -4e5, max: 1.2e6, noNaN: true });

describe('heat content and temperature', () => {
  it('a temperature should always come back from its heat content', () =>
    fc.assert(
      fc.property(anyFreezing, anyTemperature, (freezing, temperature) => {
        const back = temperatureOf(freezing, enthalpyOf(freezing, temperature));
        expect(Math.abs(back - temperature)).toBeLessThan(1e-9);
      }),
    ));

  it('a heat content should always come back from its temperature, or on a plateau from its solid fraction', () =>
    fc.assert(
      fc.property(anyFreezing, anyEnthalpy, (freezing, enthalpy) => {
        const solid = solidFractionOf(freezing, enthalpy);
        const onPlateau =
          freezing.solidus === freezing.liquidus && temperatureOf(freezing, enthalpy) === freezing.solidus;
        const back = onPlateau
          ? enthalpyAtSolidFraction(freezing, solid)
          : enthalpyOf(freezing, temperatureOf(freezing, enthalpy));
        // A tenth of a kelvin's range holds all the latent heat: the temperature's last digit then weighs more.
        expect(Math.abs(back - enthalpy)).toBeLessThan(1e-6 * liquidEnthalpy(freezing));
      }),
    ));

  it('more heat should always mean no lower temperature and no more solid', () =>
    fc.assert(
      fc.property(anyFreezing, anyEnthalpy, anyEnthalpy, (freezing, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(temperatureOf(freezing, low)).toBeLessThanOrEqual(temperatureOf(freezing, high));
        expect(solidFractionOf(freezing, low)).toBeGreaterThanOrEqual(solidFractionOf(freezing, high));
      }),
    ));

  it('all the heat of freezing lies between liquidus and solidus', () => {
    const freezing: Freezing = {
      density: 2400,
      liquidus: 886,
      solidus: 828,
      latentHeat: 425e3,
      liquidHeat: 1175,
      solidHeat: 963,
      conductivity: 75,
      coherency: 0.25,
    };
    expect(enthalpyOf(freezing, 886) - enthalpyOf(freezing, 828)).toBeCloseTo(425e3 + 1069 * 58, 6);
    expect(solidFractionOf(freezing, enthalpyOf(freezing, 857))).toBeCloseTo(0.5, 12);
  });

  it('the implicit step should always solve its equation and never pass the die', () =>
    fc.assert(
      fc.property(
        anyFreezing,
        anyEnthalpy,
        fc.double({ min: 1e-3, max: 1e9, noNaN: true }),
        fc.double({ min: 300, max: 1200, noNaN: true }),
        (freezing, before, kappa, die) => {
          const after = implicitEnthalpy(freezing, liquidEnthalpy(freezing), before, kappa, die);
          const there = temperatureOf(freezing, after);
          const scale = Math.abs(before) + kappa * Math.abs(there - die) + liquidEnthalpy(freezing) + kappa;
          expect(Math.abs(after + kappa * (there - die) - before) / scale).toBeLessThan(1e-9);
          const start = temperatureOf(freezing, before);
          expect(there).toBeGreaterThanOrEqual(Math.min(start, die) - 1e-9);
          expect(there).toBeLessThanOrEqual(Math.max(start, die) + 1e-9);
        },
      ),
    ));

  it('cooling for the time it takes should always end where it was asked to', () =>
    fc.assert(
      fc.property(
        anyFreezing,
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (freezing, rate, share, superheat) => {
          const from = enthalpyOf(freezing, freezing.liquidus + superheat);
          const to = enthalpyOf(freezing, freezing.solidus - 50) + share * (from + 50 * freezing.solidHeat);
          const die = freezing.solidus - 200;
          const time = coolingTime(freezing, from, to, rate, die);
          const end = coolFor(freezing, from, rate, die, time);
          expect(Math.abs(end - to)).toBeLessThan(1e-8 * liquidEnthalpy(freezing));
        },
      ),
    ));
});
