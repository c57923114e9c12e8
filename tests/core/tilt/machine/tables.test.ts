import { describe, expect, it } from 'vitest';
import { reachAt } from '$src/core/tilt/machine/linkage';
import { BENCH_MACHINE, type Cylinder, type Machine } from '$src/core/tilt/machine/machine';
import { gradeNamed, massShareOf, type Oil, oilState } from '$src/core/tilt/machine/oil';
import {
  areaOfKv,
  flowThrough,
  inSeries,
  laminarResistance,
  orificeResistance,
  pressureLoss,
} from '$src/core/tilt/machine/passage';
import { blendViscosity, viscosityAt } from '$src/core/tilt/machine/viscosity';
import {
  fromBar,
  fromCelsius,
  fromCentistokes,
  fromDegrees,
  kvFromCv,
  toCentistokes,
  toCubicMetresPerHour,
} from '$src/core/units';
import { entry, HALF_A_DIGIT, named, relativeError, type Table } from '../../../tables/heat/table';
import D01 from '../../../tables/machine/D01_hagen_poiseuille.json';
import D02 from '../../../tables/machine/D02_orifice.json';
import D03 from '../../../tables/machine/D03_kv_cv.json';
import D04 from '../../../tables/machine/D04_astm_d341.json';
import D04b from '../../../tables/machine/D04b_astm_d341_low_viscosity.json';
import D05 from '../../../tables/machine/D05_viscosity_blend.json';
import D05b from '../../../tables/machine/D05b_oil_chain.json';
import D07 from '../../../tables/machine/D07_cylinder_lever.json';

/** Rows of a table as records of its columns. */
const rowsOf = (table: unknown) => {
  const whole = table as Table;
  return whole.rows.map((row) => ({
    name: String(row[0]),
    get: (column: string) => entry(whole, row, column),
  }));
};

/** Sources: OpenStax College Physics 12.4 (from memory) and the formula of Hagen and Poiseuille. */
describe('D01 laminar passage', () => {
  it.each(rowsOf(D01))('$name', ({ get }) => {
    const laminar = laminarResistance(get('mu_Pas'), get('length_m'), get('diameter_m'));
    expect(relativeError(pressureLoss({ laminar, quadratic: 0 }, get('Q_m3ps')), get('dp_Pa'))).toBeLessThan(
      2e-9,
    );
    expect(relativeError(flowThrough({ laminar, quadratic: 0 }, get('dp_Pa')), get('Q_m3ps'))).toBeLessThan(
      2e-9,
    );
  });
});

/** Sources: Bansal, Fluid Mechanics, problem 7.1 (from memory); worked answers on public pages. */
describe('D02 sharp orifice', () => {
  it.each(rowsOf(D02))('$name', ({ get }) => {
    const quadratic = orificeResistance(get('rho'), get('Cd'), get('area_m2'));
    expect(relativeError(flowThrough({ laminar: 0, quadratic }, get('dp_Pa')), get('Q_m3ps'))).toBeLessThan(
      2e-9,
    );
  });

  it('in series with a laminar part, flow and pressure invert each other', () => {
    const both = inSeries({ laminar: 3e9, quadratic: 0 }, { laminar: 0, quadratic: 4e13 });
    expect(relativeError(pressureLoss(both, flowThrough(both, 7e5)), 7e5)).toBeLessThan(1e-12);
  });
});

/** Source: IEC 60534, definition of Kv, read on secondary pages. */
describe('D03 valve coefficient', () => {
  const known = named(D03 as unknown as Table);
  const flow = (kv: number, bar: number, gravity: number) =>
    toCubicMetresPerHour(
      flowThrough(
        { laminar: 0, quadratic: orificeResistance(1000 * gravity, 1, areaOfKv(kv)) },
        fromBar(bar),
      ),
    );
  it.each([
    ['Kv per Cv (exact units)', kvFromCv(1)],
    ['water 3000 kg/h, dp 3 bar -> Kv (read, printed 1.7)', 3 / flow(1, 3, 1)],
    ['water 20 m3/h, dp 4 bar -> Kv (read, printed 10)', 20 / flow(1, 4, 1)],
    ['Cv per Kv', 1 / kvFromCv(1)],
    ['Kv=0.8, dp 0.34 bar water -> Q m3/h (read, printed 0.47)', flow(0.8, 0.34, 1)],
    ['oil SG 0.86, Kv 0.05, dp 20 bar -> Q m3/h', flow(0.05, 20, 0.86)],
    ['CdA in m2 equal to Kv=1', areaOfKv(1)],
    ['Kv of a 2 mm orifice with Cd 0.61', (0.61 * Math.PI * 0.002 ** 2) / 4 / areaOfKv(1)],
  ])('%s', (name, value) => expect(relativeError(value, known.get(name)!)).toBeLessThan(2e-9));

  it('that valve as Cv: the table divides by N1 as printed, 0.865, which is the exact factor to 3 in 100 000', () => {
    const valve = 20 / flow(1, 4, 1);
    const printed = known.get('that valve as Cv (read, printed 11.56)')!;
    expect(relativeError(valve / known.get('IEC 60534 N1 for Cv (rounded 0.865)')!, printed)).toBeLessThan(
      2e-9,
    );
    expect(relativeError(valve / kvFromCv(1), printed)).toBeLessThan(3e-5);
  });

  it('IEC 60534 N1 for Cv is Kv per Cv to the three digits it is printed with', () =>
    expect(kvFromCv(1)).toBeCloseTo(known.get('IEC 60534 N1 for Cv (rounded 0.865)')!, 4));
});

/** Sources: a public worksheet for ASTM D341; ISO 3448 mid-points (from memory). */
describe('D04 viscosity against temperature', () => {
  it.each(rowsOf(D04).filter(({ name }) => name.startsWith('ISO')))('$name', ({ get }) => {
    const points = { at40: fromCentistokes(get('v40_cSt')), at100: fromCentistokes(get('v100_cSt')) };
    const here = toCentistokes(viscosityAt(points, fromCelsius(get('T_C'))));
    expect(relativeError(here, get('v_cSt'))).toBeLessThan(1e-8);
  });

  it('the published sheet, whose T is t + 273: two oils by a shifted temperature', () => {
    const sheet = rowsOf(D04)[0]!;
    const points = {
      at40: fromCentistokes(sheet.get('v40_cSt')),
      at100: fromCentistokes(sheet.get('v100_cSt')),
    };
    // Its kelvins differ from true ones by 0.15, which moves the viscosity by about a part in a hundred thousand.
    const here = toCentistokes(viscosityAt(points, fromCelsius(sheet.get('T_C'))));
    expect(relativeError(here, sheet.get('v_cSt'))).toBeLessThan(2e-5);
    expect(relativeError(here, sheet.get('v_cSt'))).toBeGreaterThan(1e-6);
  });

  it.each(rowsOf(D04).slice(1))('$name: A and B from two temperatures', ({ get }) => {
    const points = { at40: fromCentistokes(get('v40_cSt')), at100: fromCentistokes(get('v100_cSt')) };
    const twice = (celsius: number) =>
      Math.log10(Math.log10(toCentistokes(viscosityAt(points, fromCelsius(celsius))) + 0.7));
    const [low, high] = [Math.log10(fromCelsius(10)), Math.log10(fromCelsius(90))];
    const slope = (twice(10) - twice(90)) / (high - low);
    expect(relativeError(slope, get('B'))).toBeLessThan(1e-8);
    expect(relativeError(twice(10) + slope * low, get('A'))).toBeLessThan(1e-8);
  });

  it('grades agree with the table', () => {
    for (const { name, get } of rowsOf(D04).filter(
      (row) => row.name === 'ISO VG 32' || row.name === 'ISO VG 46',
    ))
      expect(toCentistokes(gradeNamed(name as 'ISO VG 32').at100)).toBeCloseTo(get('v100_cSt'), 12);
  });
});

/** Constants read in two public codes that agree; the tolerance is that of the table itself. */
describe('D04b thin liquid', () => {
  const points = { at40: fromCentistokes(1.6), at100: fromCentistokes(0.85) };
  it.each(rowsOf(D04b))('$name °C', ({ name, get }) => {
    const at = fromCelsius(Number(name));
    expect(relativeError(toCentistokes(viscosityAt(points, at)), get('v_short_cSt'))).toBeLessThan(1e-8);
    expect(relativeError(toCentistokes(viscosityAt(points, at, 'full')), get('v_full_cSt'))).toBeLessThan(
      1e-8,
    );
  });
});

/** Sources: Maples 2000 as quoted publicly (Refutas); scope of ASTM D7152. */
describe('D05 blend', () => {
  const rows = rowsOf(D05).filter(({ name }) => /^(Refutas|D7152 ASTM 0.7 \(short\))/.test(name));
  it.each(rows.map((row, index) => ({ ...row, index })))('$name row $index', ({ name, get, index }) => {
    const isFirst = index === 0;
    const rule = name.startsWith('Refutas') ? 'Refutas' : 'ASTM D7152';
    const [first, second] = isFirst ? [5, 20] : [46, 1.6];
    const blend = blendViscosity(
      fromCentistokes(first),
      fromCentistokes(second),
      get('fraction_of_component_2'),
      rule,
    );
    expect(relativeError(toCentistokes(blend), get('v_blend_cSt'))).toBeLessThan(1e-8);
  });
});

/** D01, D04 and D05 linked, at four thinnings and three temperatures. */
describe('D05b oil from grade to flow', () => {
  it.each(rowsOf(D05b))('$name °C', ({ name, get }) => {
    const massShare = massShareOf(get('kerosene_volume_fraction'), 870, 800);
    expect(Math.abs(massShare - get('kerosene_mass_fraction'))).toBeLessThan(HALF_A_DIGIT);
    const thinning = { massShare, density: 800, at40: fromCentistokes(1.6), at100: fromCentistokes(0.85) };
    const oil: Oil = { grade: 'ISO VG 46', temperature: fromCelsius(Number(name)), thinning };
    const state = oilState(oil);
    expect(relativeError(toCentistokes(state.kinematic), get('v_blend_cSt'))).toBeLessThan(1e-8);
    expect(relativeError(state.density, get('rho_blend'))).toBeLessThan(1e-9);
    expect(relativeError(state.viscosity, get('mu_Pas'))).toBeLessThan(1e-8);
    const laminar = laminarResistance(state.viscosity, 0.1, 0.002);
    expect(
      relativeError(flowThrough({ laminar, quadratic: 0 }, fromBar(5)), get('Q_capillary_m3ps')),
    ).toBeLessThan(1e-8);
  });
});

/** Derived in the table: the law of cosines. ψ lies between the anchor and the eye on the body. */
describe('D07 linkage', () => {
  it.each(rowsOf(D07))('at $name°', ({ name, get }) => {
    const cylinder: Cylinder = {
      ...machine().cylinder,
      anchor: { x: 0.6, y: 0 },
      attachment: { x: 0.35, y: 0 },
    };
    const { length, lever } = reachAt(cylinder, fromDegrees(Number(name)));
    expect(Math.abs(length - get('length_m'))).toBeLessThan(1e-8);
    expect(Math.abs(lever - get('lever_dl_dpsi_m'))).toBeLessThan(1e-8);
  });
});

const machine = (): Machine => BENCH_MACHINE;
