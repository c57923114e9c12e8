import { Solver } from 'odex';
import { describe, expect, it } from 'vitest';
import { coolFor } from '$src/core/heat/cooling';
import { enthalpyOf, temperatureOf } from '$src/core/heat/enthalpy';
import { freezingOf } from '$src/core/heat/freezing';
import { lumpedTemperature, lumpedTime, lumpedTimeConstant } from '$src/core/heat/lumped';
import { THERMAL_METALS } from '$src/core/heat/thermalMetals';
import { fromCelsius, toCelsius } from '$src/core/units';
import E04 from '../../tables/heat/E04_lumped_cooling.json';
import { entry, HALF_A_DIGIT, relativeError } from '../../tables/heat/table';

/** y at the end, by an independent solver (odex, Hairer's extrapolation code). */
function integrate(derivative: (y: number) => number, start: number, end: number): number {
  const solver = new Solver(1);
  solver.absoluteTolerance = 1e-11;
  solver.relativeTolerance = 1e-12;
  return solver.solve((_, y) => [derivative(y[0]!)], 0, [start], end).y[0]!;
}

describe('lumped cooling', () => {
  const { rho, c, M, h, T_inf, T0 } = E04.parameters;
  const tau = lumpedTimeConstant(rho, c, M, h);

  /** Source: Incropera (from memory): a 20 mm steel plate cooling on both faces. */
  it.each(E04.rows.map((row) => [row[0]!, row] as const))('E04 after %d s', (time, row) => {
    const here = lumpedTemperature(fromCelsius(T0), fromCelsius(T_inf), time, tau);
    expect(relativeError(toCelsius(here), entry(E04, row, 'T_C'))).toBeLessThan(HALF_A_DIGIT);
    expect(lumpedTime(fromCelsius(T0), fromCelsius(T_inf), here, tau)).toBeCloseTo(time, 8);
  });

  it('agrees with an ODE solver', () => {
    const end = integrate((y) => -(y - T_inf) / tau, T0, 1800);
    expect(Math.abs(end - lumpedTemperature(T0, T_inf, 1800, tau))).toBeLessThan(1e-8);
  });

  it('never comes to the temperature of its surroundings', () => {
    expect(lumpedTime(600, 300, 300, 10)).toBe(Number.POSITIVE_INFINITY);
  });

  /** Each metal from 100 K over its liquidus until well in the solid; kinks of H(T) stepped over one by one. */
  it.each(THERMAL_METALS.map((thermal) => [thermal.base, thermal] as const))(
    '%s through its freezing range agrees with an ODE solver',
    (_, thermal) => {
      const freezing = freezingOf(thermal, thermal.solidDensity);
      const die = thermal.dieRange.low;
      const start = enthalpyOf(freezing, freezing.liquidus + 100);
      const rate = 200;
      const slope = (y: number) => -rate * (temperatureOf(freezing, y) - die);
      let enthalpy = start;
      let time = 0;
      for (const until of [0.25, 0.5, 1, 2, 4, 8]) {
        // Small stretches: the solver's order holds only between kinks, so they are made short there.
        const steps = 100;
        for (let k = 0; k < steps; k++) enthalpy = integrate(slope, enthalpy, (until - time) / steps);
        time = until;
        const exact = coolFor(freezing, start, rate, die, until);
        expect(Math.abs(temperatureOf(freezing, enthalpy) - temperatureOf(freezing, exact))).toBeLessThan(
          1e-6,
        );
      }
    },
  );
});
