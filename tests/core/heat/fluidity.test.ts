import { describe, expect, it } from 'vitest';
import { GRAVITY } from '$src/core/gravity';
import {
  fluidityLength,
  plateModulus,
  roundBarModulus,
  runningTime,
  slotHead,
} from '$src/core/heat/fluidity';
import { fromCelsius, fromMillimetres, toMillimetres } from '$src/core/units';
import E05 from '../../tables/heat/E05_fluidity_length.json';
import { entry, HALF_A_DIGIT, relativeError } from '../../tables/heat/table';

describe('running length', () => {
  /** Source: Flemings' fluidity relation (from memory). */
  it.each(E05.rows.map((row) => [row.slice(0, 4).join(', '), row] as const))('E05 %s', (_, row) => {
    const { rho, Hf, c, T_melt_C, T_die_C, h } = E05.parameters;
    const metal = { density: rho, latentHeat: Hf, liquidHeat: c, freezingTemperature: fromCelsius(T_melt_C) };
    const time = runningTime(
      metal,
      plateModulus(entry(E05, row, 'thickness_m')),
      entry(E05, row, 'superheat_K'),
      entry(E05, row, 'fraction_of_latent_heat'),
      { transfer: h, dieTemperature: fromCelsius(T_die_C) },
    );
    expect(relativeError(time, entry(E05, row, 't_stop_s'))).toBeLessThan(HALF_A_DIGIT);
    expect(
      relativeError(fluidityLength(entry(E05, row, 'speed_mps'), time), entry(E05, row, 'L_f_m')),
    ).toBeLessThan(HALF_A_DIGIT);
  });

  /** Worked out from the formula for walls of 3 to 6 mm: ρ 2380, L 430 kJ/kg, c 1170, 85 K superheat, 590 and 350 °C. */
  it.each([
    [3, 2000, 0.25, 1.54, 0.46],
    [4, 2000, 0.25, 2.05, 0.62],
    [4, 800, 0.25, 5.13, 1.54],
    [5, 1000, 0.25, 5.13, 1.54],
    [6, 1500, 0.25, 4.1, 1.23],
    [4, 2000, 0.35, 2.48, 0.74],
  ])('%d mm at %d W/m²K to a solid fraction of %d: %d s, %d m at 0.3 m/s', (mm, transfer, fraction, t, l) => {
    const metal = {
      density: 2380,
      latentHeat: 430e3,
      liquidHeat: 1170,
      freezingTemperature: fromCelsius(590),
    };
    const contact = { transfer, dieTemperature: fromCelsius(350) };
    const time = runningTime(metal, plateModulus(fromMillimetres(mm)), 85, fraction, contact);
    expect(Math.abs(time - t)).toBeLessThan(0.0051);
    expect(Math.abs(fluidityLength(0.3, time) - l)).toBeLessThan(0.0051);
  });

  it('counts a bar by its radius and a plate by its full thickness: both come to half', () => {
    expect(roundBarModulus(0.004)).toBeCloseTo((Math.PI * 0.004 ** 2) / (2 * Math.PI * 0.004), 15);
    expect(plateModulus(0.004)).toBeCloseTo((0.004 * 1e6) / (2 * 1e6), 15);
  });

  it('a 3 mm slot needs 25 mm of aluminium to fill at all when nothing wets (2 γ/s = 577 Pa)', () => {
    const head = slotHead(0.865, Math.PI, 2380, GRAVITY, fromMillimetres(3));
    expect(head * 2380 * GRAVITY).toBeCloseTo(577, 0);
    expect(toMillimetres(head)).toBeCloseTo(25, 0);
  });
});
