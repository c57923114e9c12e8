import { describe, expect, it } from 'vitest';
import { enthalpyOf } from '$src/core/heat/enthalpy';
import type { Freezing } from '$src/core/heat/freezing';
import {
  biotNumber,
  modulusPower,
  simpleFreezingTime,
  timeToSolidFraction,
  twoStageFreezingTime,
} from '$src/core/heat/freezingTime';
import { lumpedTime, lumpedTimeConstant } from '$src/core/heat/lumped';
import { skinTime } from '$src/core/heat/skin';
import { fromCelsius, fromMillimetres } from '$src/core/units';
import E03 from '../../tables/heat/E03_interface_limited.json';
import { entry, HALF_A_DIGIT, relativeError } from '../../tables/heat/table';

const { rho, Hf, c, T_melt_C, T_die_C } = E03.parameters;
const METAL = { density: rho, latentHeat: Hf, liquidHeat: c, freezingTemperature: fromCelsius(T_melt_C) };
const DIE = fromCelsius(T_die_C);
/** The same metal as the carried heat sees it: a freezing range without width. */
const PLATEAU: Freezing = {
  density: rho,
  liquidus: fromCelsius(T_melt_C),
  solidus: fromCelsius(T_melt_C),
  latentHeat: Hf,
  liquidHeat: c,
  solidHeat: c,
  conductivity: 75,
  coherency: 1,
};

describe('interface-limited freezing', () => {
  /** Source: Flemings 1974 (from memory) for the simple form; the two stages derived for the table. */
  it.each(E03.rows.map((row) => [row.slice(0, 3).join(', '), row] as const))('E03 %s', (_, row) => {
    const modulus = entry(E03, row, 'plate_thickness_m') / 2;
    const contact = { transfer: entry(E03, row, 'h_Wpm2K'), dieTemperature: DIE };
    const pouring = fromCelsius(entry(E03, row, 'T_pour_C'));
    const stages = twoStageFreezingTime(METAL, modulus, pouring, contact);
    const simple = simpleFreezingTime(METAL, modulus, pouring, contact);
    expect(relativeError(simple, entry(E03, row, 't_simple_s'))).toBeLessThan(HALF_A_DIGIT);
    expect(relativeError(stages.superheat, entry(E03, row, 't_superheat_log_s'))).toBeLessThan(HALF_A_DIGIT);
    expect(relativeError(stages.latent, entry(E03, row, 't_latent_s'))).toBeLessThan(HALF_A_DIGIT);
    expect(relativeError(stages.total, entry(E03, row, 't_two_stage_s'))).toBeLessThan(HALF_A_DIGIT);
    expect(simple / stages.total - 1).toBeCloseTo(entry(E03, row, 'simple_over_exact_minus_1'), 9);
    expect(biotNumber(contact.transfer, modulus, 70)).toBeCloseTo(entry(E03, row, 'Biot_hM/k(k=70)'), 9);
    const throughRange = timeToSolidFraction(PLATEAU, modulus, pouring, contact, 1);
    expect(relativeError(throughRange, stages.total)).toBeLessThan(1e-12);
  });

  /** A356-like, worked out from the formula (no published example of the interface-controlled case was found). */
  it.each([
    [2.5, 2000, 7.03, 5.71],
    [2.5, 1000, 14.06, 11.42],
    [5, 1000, 28.13, 22.84],
    [10, 1000, 56.25, 45.69],
  ])('modulus %d mm at %d W/m²K: %d s with superheat, %d s latent alone', (mm, transfer, all, latent) => {
    const metal = {
      density: 2550,
      latentHeat: 430e3,
      liquidHeat: 1170,
      freezingTemperature: fromCelsius(590),
    };
    const contact = { transfer, dieTemperature: fromCelsius(350) };
    const hot = simpleFreezingTime(metal, fromMillimetres(mm), fromCelsius(675), contact);
    const cold = simpleFreezingTime(metal, fromMillimetres(mm), fromCelsius(590), contact);
    expect(Math.abs(hot - all)).toBeLessThan(0.0051);
    expect(Math.abs(cold - latent)).toBeLessThan(0.0051);
  });

  it('loses superheat as a lump: 700 to 615 °C, 2.5 mm at 2000 W/m²K, in 0.97 s (form: DoITPoMS, read)', () => {
    const tau = lumpedTimeConstant(2380, 1170, fromMillimetres(2.5), 2000);
    expect(lumpedTime(fromCelsius(700), fromCelsius(350), fromCelsius(615), tau)).toBeCloseTo(0.97, 2);
    const metal = { ...PLATEAU, density: 2380, liquidHeat: 1170, liquidus: fromCelsius(615) };
    const there = timeToSolidFraction(
      { ...metal, solidus: fromCelsius(555) },
      fromMillimetres(2.5),
      fromCelsius(700),
      { transfer: 2000, dieTemperature: fromCelsius(350) },
      0,
    );
    expect(
      relativeError(there, lumpedTime(fromCelsius(700), fromCelsius(350), fromCelsius(615), tau)),
    ).toBeLessThan(1e-12);
  });

  it('is linear in the modulus, and drifts to the square as the skin series does', () => {
    const contact = { transfer: 1500, dieTemperature: DIE };
    const at = (modulus: number) => timeToSolidFraction(PLATEAU, modulus, fromCelsius(700), contact, 1);
    expect(at(0.02) / at(0.01)).toBeCloseTo(2, 12);
    const skin = { density: 2550, latentHeat: 389e3, conductivity: 150 };
    for (const thickness of [1e-4, 0.01, 1]) {
      const step = 1e-5;
      const slope =
        Math.log(skinTime(skin, thickness * (1 + step), 2000, 250) / skinTime(skin, thickness, 2000, 250)) /
        Math.log(1 + step);
      expect(modulusPower(biotNumber(2000, thickness, 150))).toBeCloseTo(slope, 4);
    }
    expect(modulusPower(0)).toBe(1);
    expect(modulusPower(1e9)).toBeCloseTo(2, 6);
  });

  it('never ends in a die hotter than the solidus', () => {
    const contact = { transfer: 1500, dieTemperature: fromCelsius(T_melt_C) };
    expect(timeToSolidFraction(PLATEAU, 0.01, fromCelsius(700), contact, 1)).toBe(Number.POSITIVE_INFINITY);
    expect(enthalpyOf(PLATEAU, fromCelsius(T_melt_C))).toBe(Hf);
  });
});
