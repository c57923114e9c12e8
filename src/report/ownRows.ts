import type { Metal, Sourced } from '$src/core/metal/metal';
import type { SourcedRange } from '$src/core/metal/thermal';
import { DENSITY, METRIC, type PageUnits, TEMPERATURE, toKilojoules } from '$src/core/units';
import { fixed, percentNumber, significant } from './wording';

/** One thermal property in the words of a table. */
export interface OwnRow {
  readonly name: string;
  readonly text: string;
  readonly unit: string;
}

const whole = (value: number): string => fixed(value, 0);
const shared = (share: number): string => fixed(share * 100, 1);

/** What its user typed of a metal's freezing and heat, in the order a founder reads it; empty where all is of its base. */
export function ownRows({ thermal = {} }: Metal, units: PageUnits = METRIC): OwnRow[] {
  const { unit: degrees, toShown } = TEMPERATURE[units.temperature];
  const heat = (kelvin: number): string => whole(toShown(kelvin));
  const density = (value: number): string =>
    fixed(DENSITY[units.mass].toShown(value), units.mass === 'kg' ? 0 : 4);
  const row = (name: string, unit: string, own: Sourced | undefined, show: (value: number) => string) =>
    own ? [{ name, unit, text: show(own.value) }] : [];
  const range = (name: string, own: SourcedRange | undefined) =>
    own ? [{ name, unit: degrees, text: `${heat(own.low)}–${heat(own.high)}` }] : [];
  return [
    ...row('liquidus', degrees, thermal.liquidus, heat),
    ...row('solidus', degrees, thermal.solidus, heat),
    ...row('share solid at which a front stops', '%', thermal.coherency, percentNumber),
    ...row('latent heat', 'kJ/kg', thermal.latentHeat, (joules) => whole(toKilojoules(joules))),
    ...row('specific heat, liquid', 'J/kgK', thermal.liquidHeat, whole),
    ...row('specific heat, solid', 'J/kgK', thermal.solidHeat, whole),
    ...row('conductivity, solid', 'W/mK', thermal.solidConductivity, whole),
    ...row('density, solid', DENSITY[units.mass].unit, thermal.solidDensity, density),
    ...row('shrinkage on freezing', '%', thermal.freezingShrinkage, shared),
    ...row('pattern contraction', '%', thermal.contraction, shared),
    ...row('emissivity, surface', '', thermal.emissivity, significant),
    ...range('usual pouring', thermal.pouringRange),
    ...range('usual die', thermal.dieRange),
  ];
}
