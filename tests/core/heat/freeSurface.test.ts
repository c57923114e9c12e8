import { describe, expect, it } from 'vitest';
import { AIR_TRANSFER, surfaceTransfer } from '$src/core/heat/freeSurface';
import { thermalOf } from '$src/core/heat/thermalMetals';
import { thermalSources } from '$src/core/heat/thermalSources';
import { METALS, metalNamed } from '$src/core/metal/metals';
import { fromCelsius } from '$src/core/units';

const SHOP = fromCelsius(20);
const at = (base: string, temperature = metalNamed(base)!.pouringTemperature.value): number =>
  surfaceTransfer(thermalOf(base)!.emissivity, temperature, SHOP);

/** Stefan–Boltzmann: a black body gives off 56.70 kW/m² at 1000 K and 459.3 W/m² at 300 K (tables of heat transfer, from memory). */
describe('heat off a free surface', () => {
  it('is the radiation of a grey body less that of the shop, over the difference of temperature, and air', () => {
    const perKelvin = (56_704 - 459.3) / 700;
    expect(surfaceTransfer(1, 1000, 300) - AIR_TRANSFER).toBeCloseTo(perKelvin, 2);
    expect(surfaceTransfer(0.2, 1000, 300) - AIR_TRANSFER).toBeCloseTo(0.2 * perKelvin, 2);
  });

  it('is 4 ε σ T³ where metal and shop are equally warm', () => {
    expect(surfaceTransfer(0.5, 300, 300) - AIR_TRANSFER).toBeCloseTo((0.5 * 4 * 459.3) / 300, 3);
  });

  /** 25 W/(m² K) was taken for oxidised aluminium near 700 °C before: emissivity about 0.2, and air. */
  it('stays what it was for A356, and is over three times as much for aluminium bronze', () => {
    expect(Math.abs(at('A356', fromCelsius(700)) - 25)).toBeLessThan(0.5);
    expect(Math.abs(at('A356') - 25)).toBeLessThan(0.5);
    expect(at('aluminium bronze')).toBeGreaterThan(3 * at('A356'));
    expect(at('aluminium bronze')).toBeGreaterThan(85);
    expect(at('aluminium bronze')).toBeLessThan(95);
  });

  it('has an emissivity for each metal, its source told, and none of those from memory or of solids called high', () => {
    for (const { base } of METALS) {
      const value = thermalOf(base)!.emissivity;
      const { source, confidence } = thermalSources(base)!.emissivity;
      expect(value).toBeGreaterThan(0);
      expect(value).toBeLessThanOrEqual(1);
      expect(source).toMatch(/read|from memory/i);
      expect(['low', 'medium']).toContain(confidence);
    }
  });
});
