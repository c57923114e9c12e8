import { describe, expect, it } from 'vitest';
import { cautionOf } from '$src/core/heat/cautions';
import { coatTransfer } from '$src/core/heat/coat';
import { COATS, OPENED_GAP } from '$src/core/heat/coats';
import { freezingOf } from '$src/core/heat/freezing';
import { THERMAL_METALS, thermalOf } from '$src/core/heat/thermalMetals';
import { thermalSources } from '$src/core/heat/thermalSources';
import { checkMetal } from '$src/core/metal/checkMetal';
import { criticalSpeed } from '$src/core/metal/criticalSpeed';
import { FURTHER_METALS } from '$src/core/metal/furtherMetals';
import { METALS } from '$src/core/metal/metals';
import { fromCelsius } from '$src/core/units';

const SOURCED = [
  'liquidus',
  'solidus',
  'latentHeat',
  'liquidHeat',
  'solidHeat',
  'solidDensity',
  'solidConductivity',
  'coherency',
  'freezingShrinkage',
  'contraction',
  'emissivity',
] as const;

describe('metals and heat', () => {
  it.each(THERMAL_METALS.map((thermal) => [thermal.base, thermal] as const))(
    '%s: each value with a source, in order, with a caution that defers to law',
    (_, thermal) => {
      const sources = thermalSources(thermal.base)!;
      for (const key of SOURCED) {
        expect(sources[key].source.length).toBeGreaterThan(10);
        expect(thermal[key]).toBeGreaterThan(0);
      }
      expect(thermal.solidus).toBeLessThanOrEqual(thermal.liquidus);
      expect(thermal.dieRange.high).toBeLessThan(thermal.solidus);
      expect(thermal.pouringRange.low).toBeGreaterThan(thermal.liquidus);
      expect(sources.coherency.confidence).toBe('assumed');
      expect(cautionOf(thermal.base)).toMatch(/local law/);
    },
  );

  it('has heat for every metal of the shop and for the further ones', () => {
    for (const metal of [...METALS, ...FURTHER_METALS]) {
      const thermal = thermalOf(metal.base);
      expect(thermal, metal.base).toBeDefined();
      expect(metal.density.value).toBeLessThan(thermal!.solidDensity);
      expect(metal.pouringTemperature.value).toBeGreaterThanOrEqual(thermal!.pouringRange.low);
      expect(metal.pouringTemperature.value).toBeLessThanOrEqual(thermal!.pouringRange.high);
      expect(freezingOf(thermal!, metal.density.value).density).toBe(metal.density.value);
    }
    expect(thermalOf('pewter')).toBeUndefined();
  });

  it('tells the front of AlSi12 as the longest run, and how early it may stop instead', () => {
    const { source } = thermalSources('AlSi12')!.coherency;
    expect(source).toMatch(/no source.*longest run.*0\.2 to 0\.35/);
    expect(thermalOf('AlSi12')!.coherency).toBe(0.9);
  });

  it('names what is dangerous in each', () => {
    expect(cautionOf('brass')).toMatch(/[Zz]inc/);
    expect(cautionOf('brass')).toMatch(/lead/);
    expect(cautionOf('ZA-12')).toMatch(/[Zz]inc/);
    expect(cautionOf('AZ91')).toMatch(/burn/);
    expect(cautionOf('AZ91')).toMatch(/[Nn]ever water/);
  });

  it('the further metals are sound, with critical speeds as published or computed (0.38 ZA-12, 0.35 to 0.39 brass, 0.49 AZ91)', () => {
    for (const metal of FURTHER_METALS) expect(checkMetal(metal)).toEqual([]);
    const speeds = new Map(FURTHER_METALS.map((metal) => [metal.base, criticalSpeed(metal)]));
    expect(Math.abs(speeds.get('ZA-12')! - 0.38)).toBeLessThan(0.0051);
    expect(Math.abs(speeds.get('brass')! - 0.37)).toBeLessThan(0.02);
    expect(Math.abs(speeds.get('AZ91')! - 0.49)).toBeLessThan(0.0051);
  });

  /** A rule of mixtures puts the latent heat of Al-7Si at 495 kJ/kg; the value kept lies within the spread in use, 389 to 500. */
  it('keeps the latent heat of A356 inside what is in circulation', () => {
    const value = thermalOf('A356')!.latentHeat;
    expect(value).toBeGreaterThan(389e3);
    expect(value).toBeLessThan(0.93 * 397e3 + 0.07 * 1790e3);
    expect(thermalOf('A356')!.liquidus).toBe(fromCelsius(613));
  });
});

describe('coats', () => {
  /** Series sum, printed to the figures of the note they come from: thickness, conductivity, air, gap → h. */
  it.each([
    [50e-6, 0.4, 5e-6, 0, 4800],
    [150e-6, 0.4, 10e-6, 0, 1850],
    [300e-6, 0.4, 15e-6, 0, 1000],
    [150e-6, 0.4, 10e-6, 20e-6, 1145],
    [150e-6, 0.4, 10e-6, 50e-6, 728],
    [150e-6, 0.4, 10e-6, 100e-6, 453],
    [150e-6, 0.4, 10e-6, 200e-6, 258],
  ])('%d m at %d W/mK, air %d m, gap %d m: about %d W/m²K', (thickness, conductivity, airLayer, gap, h) => {
    const found = coatTransfer({ thickness, conductivity, airLayer, gap });
    expect(Math.abs(found / h - 1)).toBeLessThan(0.003);
  });

  it('presets come to what practice quotes', () => {
    const of = (name: string) => coatTransfer(COATS.find((coat) => coat.name === name)!);
    expect(of('Thin graphite')).toBeGreaterThan(9500);
    expect(of('Feeder coat')).toBeGreaterThan(200);
    expect(of('Feeder coat')).toBeLessThan(600);
    expect(coatTransfer({ ...COATS[1]!, gap: OPENED_GAP })).toBeCloseTo(453, 0);
    expect(COATS.every((coat) => coat.confidence === 'low' && coat.source.length > 10)).toBe(true);
  });

  it('refuses a coat of nothing', () => {
    expect(() => coatTransfer({ thickness: 0, conductivity: 1, airLayer: 0, gap: 0 })).toThrow(/resistance/);
  });
});
