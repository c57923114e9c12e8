import type { ThermalMetal } from '$src/core/heat/thermal';
import type { Confidence, Sourced } from '$src/core/metal/metal';
import { DENSITY, METRIC, type PageUnits, TEMPERATURE, toKilojoules } from '$src/core/units';
import { fixed, percentNumber } from './wording';

/** One thermal property in the words of a table. */
export interface ThermalRow {
  readonly name: string;
  readonly text: string;
  readonly unit: string;
  readonly source: string;
  readonly confidence: Confidence;
}

const whole = (value: number): string => fixed(value, 0);
const shared = (share: number): string => fixed(share * 100, 1);

const row = (name: string, unit: string, { value, ...rest }: Sourced, show: (value: number) => string) => ({
  name,
  unit,
  text: show(value),
  ...rest,
});

/** What a metal is to heat, in the order a founder reads it. */
export function thermalRows(thermal: ThermalMetal, units: PageUnits = METRIC): ThermalRow[] {
  const { unit: degrees, toShown } = TEMPERATURE[units.temperature];
  const heat = (kelvin: number): string => fixed(toShown(kelvin), 0);
  const density = (value: number): string =>
    fixed(DENSITY[units.mass].toShown(value), units.mass === 'kg' ? 0 : 4);
  const { pouringRange, dieRange } = thermal;
  return [
    row('liquidus', degrees, thermal.liquidus, heat),
    row('solidus', degrees, thermal.solidus, heat),
    row('share solid at which a front stops', '%', thermal.coherency, percentNumber),
    row('latent heat', 'kJ/kg', thermal.latentHeat, (joules) => whole(toKilojoules(joules))),
    row('specific heat, liquid', 'J/kgK', thermal.liquidHeat, whole),
    row('specific heat, solid', 'J/kgK', thermal.solidHeat, whole),
    row('conductivity, solid', 'W/mK', thermal.solidConductivity, whole),
    row('density, solid', DENSITY[units.mass].unit, thermal.solidDensity, density),
    row('shrinkage on freezing', '%', thermal.freezingShrinkage, shared),
    row('pattern contraction', '%', thermal.contraction, shared),
    ...[
      { name: 'pouring range', range: pouringRange },
      { name: 'die range', range: dieRange },
    ].map(({ name, range }) => ({
      name,
      unit: degrees,
      text: `${heat(range.low)}–${heat(range.high)}`,
      source: range.source,
      confidence: range.confidence,
    })),
  ];
}
