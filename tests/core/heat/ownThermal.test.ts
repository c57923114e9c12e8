import { describe, expect, it } from 'vitest';
import { checkHeat } from '$src/core/heat/checkHeat';
import { checkPouring, pouringLimits } from '$src/core/heat/checkPouring';
import { checkThermal } from '$src/core/heat/checkThermal';
import { setMetalOf, thermalOf, thermalOfMetal } from '$src/core/heat/thermalMetals';
import type { Metal } from '$src/core/metal/metal';
import { METALS, metalNamed } from '$src/core/metal/metals';
import { withThermal } from '$src/core/metal/ownThermal';
import type { OwnThermal } from '$src/core/metal/thermal';
import { heatPlanOf, usualDieTemperature } from '$src/core/pour/heatPlanOf';
import { FIRST_SIZE } from '$src/core/section/firstSize';
import { flushBasin } from '$src/core/section/shapes';
import { fromCelsius, toCelsius } from '$src/core/units';

const A356 = metalNamed('A356')!;
const SECTION = flushBasin(FIRST_SIZE);
const typed = { source: 'Typed in by you', confidence: 'yours' } as const;
const value = (number: number) => ({ value: number, ...typed });
const celsius = (degrees: number) => value(fromCelsius(degrees));
const range = (low: number, high: number) => ({ low: fromCelsius(low), high: fromCelsius(high), ...typed });
const alloy = (thermal: OwnThermal, base = A356): Metal => ({ ...base, thermal });

describe('a metal with freezing data of its own', () => {
  it('takes what is typed and the rest of its base', () => {
    const own = alloy({ liquidus: celsius(600), latentHeat: value(390e3) });
    const thermal = thermalOfMetal(own)!;
    expect(thermal).toEqual({ ...thermalOf('A356'), liquidus: fromCelsius(600), latentHeat: 390e3 });
    expect(heatPlanOf(own, SECTION)!.freezing).toMatchObject({
      liquidus: fromCelsius(600),
      latentHeat: 390e3,
      solidus: fromCelsius(555),
    });
    expect(heatPlanOf(own, SECTION)!.lapTemperature).toBe(fromCelsius(600));
    expect(pouringLimits(own)![0]).toBe(fromCelsius(600));
  });

  it('keeps only what was typed, and nothing once all is taken back', () => {
    const one = withThermal(A356, 'liquidus', celsius(600));
    const two = withThermal(one, 'latentHeat', value(390e3));
    expect(two.thermal).toEqual({ liquidus: celsius(600), latentHeat: value(390e3) });
    const back = withThermal(withThermal(two, 'liquidus', null), 'latentHeat', null);
    expect(back).toEqual(A356);
    expect('thermal' in back).toBe(false);
    expect(withThermal(A356, 'solidus', null)).toEqual(A356);
  });

  it('is told by its own numbers after the fill, whichever of them differ from those of the book', () => {
    const told = (thermal: OwnThermal) => setMetalOf(heatPlanOf(alloy(thermal), SECTION)!)!;
    expect(told({ latentHeat: value(390e3) }).freezingShrinkage).toBe(thermalOf('A356')!.freezingShrinkage);
    expect(told({ freezingShrinkage: value(0.06) }).freezingShrinkage).toBe(0.06);
    expect(told({ solidConductivity: value(120) }).solidConductivity).toBe(120);
    expect(told({ pouringRange: range(690, 740) }).pouringRange.high).toBe(fromCelsius(740));
    expect(told({ dieRange: range(200, 260) }).dieRange.low).toBe(fromCelsius(200));
    // One whose freezing happens to be that of another metal of the book is still its own base.
    const { liquidus, solidus, latentHeat } = thermalOf('AlSi12')!;
    expect(
      told({ liquidus: value(liquidus), solidus: value(solidus), latentHeat: value(latentHeat) }).base,
    ).toBe('A356');
  });

  it('leaves the plan of a metal as it comes untouched, and that of one whose emissivity or contraction alone was typed', () => {
    const plain = heatPlanOf(A356, SECTION)!;
    expect('own' in plain).toBe(false);
    expect(heatPlanOf(alloy({ emissivity: value(0.3), contraction: value(0.012) }), SECTION)).toEqual(plain);
    expect(setMetalOf(plain)!.base).toBe('A356');
  });

  it('has no thermal part where nothing is known of its base', () => {
    const unknown = { ...alloy({ liquidus: celsius(600) }), base: 'pewter' };
    expect(thermalOfMetal(unknown)).toBeUndefined();
    expect(checkThermal(unknown)).toEqual([]);
  });
});

describe('what is typed of a metal', () => {
  it('is in order for each metal as it comes, and for its own data typed anew', () => {
    for (const metal of METALS) {
      expect(checkThermal(metal)).toEqual([]);
      const { base: _, ...same } = thermalOf(metal.base)!;
      const anew = Object.entries(same).map(([field, one]) => [
        field,
        typeof one === 'number' ? value(one) : { ...one, ...typed },
      ]);
      const thermal: OwnThermal = Object.fromEntries(anew);
      expect(checkThermal({ ...metal, thermal })).toEqual([]);
      expect(thermalOfMetal({ ...metal, thermal })).toEqual(thermalOf(metal.base));
    }
  });

  it('may be another alloy altogether: a silicon bronze begun from aluminium bronze', () => {
    const bronze = metalNamed('aluminium bronze')!;
    const silicon = alloy(
      { liquidus: celsius(1025), solidus: celsius(970), latentHeat: value(205e3) },
      bronze,
    );
    expect([...checkThermal(silicon), ...checkPouring(silicon)]).toEqual([]);
    expect(checkHeat(heatPlanOf(silicon, SECTION)!)).toEqual([]);
  });

  it.each<[string, OwnThermal, string, RegExp, RegExp]>([
    [
      'a solidus above the liquidus',
      { solidus: celsius(650) },
      'solidus.value',
      /650 °C.*above.*613 °C/,
      /613 °C at most/,
    ],
    [
      'a liquidus below the solidus',
      { liquidus: celsius(540) },
      'liquidus.value',
      /below the solidus \(555 °C\)/,
      /555 °C or more/,
    ],
    [
      'a liquidus at the pouring temperature',
      { liquidus: celsius(715) },
      'liquidus.value',
      /not below the pouring/,
      /less than 715 °C/,
    ],
    [
      'no latent heat',
      { latentHeat: value(0) },
      'latentHeat.value',
      /latent heat of 0 kJ\/kg/,
      /10 to 2000 kJ\/kg/,
    ],
    [
      'latent heat in joules',
      { latentHeat: value(425e6) },
      'latentHeat.value',
      /425000 kJ\/kg/,
      /check the unit/,
    ],
    ['a negative specific heat', { solidHeat: value(-900) }, 'solidHeat.value', /−900 J\/kgK/, /50 to 5000/],
    ['no heat of the liquid', { liquidHeat: value(0) }, 'liquidHeat.value', /of the liquid/, /50 to 5000/],
    ['a front that never stops', { coherency: value(1) }, 'coherency.value', /100 %/, /1 to 99 %/],
    ['a front that never runs', { coherency: value(0) }, 'coherency.value', /of 0 %/, /1 to 99 %/],
    [
      'shrinkage typed as a share',
      { freezingShrinkage: value(5.3) },
      'freezingShrinkage.value',
      /530 %/,
      /0 to 12 %/,
    ],
    ['too much contraction', { contraction: value(0.13) }, 'contraction.value', /13 %/, /0 to 4 %/],
    ['no conductivity', { solidConductivity: value(0) }, 'solidConductivity.value', /0 W\/mK/, /1 to 500/],
    [
      'a solid lighter than water',
      { solidDensity: value(2.68) },
      'solidDensity.value',
      /2\.68 kg\/m³/,
      /500 to 20000/,
    ],
    [
      'more than a black body gives off',
      { emissivity: value(1.2) },
      'emissivity.value',
      /1\.2/,
      /0\.01 to 1/,
    ],
    [
      'pouring that ends below its beginning',
      { pouringRange: range(730, 700) },
      'pouringRange.high',
      /ends at 700 °C/,
      /more than 730 °C/,
    ],
    [
      'a die range of no width',
      { dieRange: range(300, 300) },
      'dieRange.high',
      /no higher than it begins/,
      /more than 300 °C/,
    ],
    [
      'a die as hot as the solidus',
      { dieRange: range(300, 560) },
      'dieRange.high',
      /not below the solidus/,
      /less than 555 °C/,
    ],
    [
      'pouring below the liquidus',
      { pouringRange: range(500, 600) },
      'pouringRange.high',
      /not above the liquidus/,
      /more than 613 °C/,
    ],
    [
      'a die colder than ice',
      { dieRange: range(-20, 300) },
      'dieRange.low',
      /begins at −20 °C/,
      /0 to 2000 °C/,
    ],
  ])('%s is refused at its field, with a remedy', (_, thermal, field, message, remedy) => {
    const [first, ...others] = checkThermal(alloy(thermal));
    expect(others).toEqual([]);
    expect(first!.path).toBe(`thermal.${field}`);
    expect(first!.message).toMatch(message);
    expect(first!.remedy).toMatch(remedy);
  });

  it('is told of at the pouring temperature too where that has become too cold', () => {
    const metal = alloy({ liquidus: celsius(720) });
    expect(checkPouring(metal)[0]!.path).toBe('pouringTemperature.value');
  });
});

describe('the die temperature that nobody typed', () => {
  it.each([
    ['A356', 350],
    ['AlSi12', 350],
    ['aluminium bronze', 250],
    ['brass', 100],
    ['ZA-12', 230],
    ['AZ91', 300],
  ])('of %s is %d °C, within what is usual', (base, degrees) => {
    const metal = metalNamed(base)!;
    const found = usualDieTemperature(metal);
    expect(toCelsius(found)).toBeCloseTo(degrees, 9);
    const { low, high } = thermalOf(base)!.dieRange;
    expect(found).toBeGreaterThanOrEqual(low);
    expect(found).toBeLessThanOrEqual(high);
    expect(heatPlanOf(metal, SECTION)!.regions.map(({ dieTemperature }) => dieTemperature)).toEqual(
      SECTION.regions.map(() => found),
    );
  });

  it('stays within a range of the user however narrow, and gives way to what is typed of a region', () => {
    expect(toCelsius(usualDieTemperature(alloy({ dieRange: range(201, 204) })))).toBeCloseTo(202.5, 9);
    const regions = SECTION.regions.map((region) => ({ ...region, dieTemperature: fromCelsius(280) }));
    const plan = heatPlanOf(metalNamed('brass')!, { ...SECTION, regions })!;
    expect(new Set(plan.regions.map(({ dieTemperature }) => dieTemperature))).toEqual(
      new Set([fromCelsius(280)]),
    );
  });

  it('is 350 °C as before where nothing is known of the metal', () => {
    expect(toCelsius(usualDieTemperature({ ...A356, base: 'pewter' }))).toBeCloseTo(350, 9);
  });
});
