import { describe, expect, it } from 'vitest';
import { errorFunction } from '$src/core/heat/errorFunction';
import { conductionShare, skinThickness, skinTime } from '$src/core/heat/skin';
import { stefanLambda, stefanThickness } from '$src/core/heat/stefan';
import E06 from '../../tables/heat/E06_stefan_one_phase.json';
import E07 from '../../tables/heat/E07_skin_quasistatic.json';
import { entry, HALF_A_DIGIT, relativeError } from '../../tables/heat/table';

describe('skin', () => {
  /** Source: Carslaw & Jaeger (from memory); the table by Newton against bisection. */
  it.each(E06.rows.map((row) => [row[0]!, row] as const))('E06 Stefan number %d', (number, row) => {
    expect(relativeError(stefanLambda(number), entry(E06, row, 'lambda'))).toBeLessThan(HALF_A_DIGIT);
    expect(relativeError(stefanThickness(number, 1, 1), entry(E06, row, 'X/sqrt(alpha t)'))).toBeLessThan(
      HALF_A_DIGIT,
    );
    expect(Math.sqrt(number / 2)).toBeCloseTo(entry(E06, row, 'quasi_static_sqrt(St/2)'), 9);
  });

  /** Source: standard series resistance (from memory); the table against quadrature. */
  it.each(E07.rows.map((row) => [row.slice(0, 2).join(' m, '), row] as const))('E07 %s W/m²K', (_, row) => {
    const { rho_solid, Hf, k_solid, dT } = E07.parameters;
    const skin = { density: rho_solid, latentHeat: Hf, conductivity: k_solid };
    const thickness = entry(E07, row, 'skin_m');
    const transfer = entry(E07, row, 'h_Wpm2K');
    const time = skinTime(skin, thickness, transfer, dT);
    expect(relativeError(time, entry(E07, row, 't_s'))).toBeLessThan(HALF_A_DIGIT);
    expect(
      relativeError(
        skinTime({ ...skin, conductivity: Number.POSITIVE_INFINITY }, thickness, transfer, dT),
        entry(E07, row, 't_interface_only_s'),
      ),
    ).toBeLessThan(HALF_A_DIGIT);
    expect(
      relativeError(
        conductionShare(thickness, transfer, k_solid),
        entry(E07, row, 'share_of_conduction_hX/2k'),
      ),
    ).toBeLessThan(HALF_A_DIGIT);
    expect(relativeError(skinThickness(skin, time, transfer, dT), thickness)).toBeLessThan(1e-12);
  });

  /** Abramowitz & Stegun, table 7.1, ten decimals (from memory). */
  it.each([
    [0.5, 0.5204998778],
    [1, 0.8427007929],
    [2, 0.995322265],
  ])('error function of %d', (x, expected) =>
    expect(Math.abs(errorFunction(x) - expected)).toBeLessThan(6e-11),
  );
});
