import type { Metal, Sourced } from '$src/core/metal/metal';
import type { SourcedRange } from '$src/core/metal/thermal';
import {
  CONDUCTIVITY,
  DENSITY,
  LATENT_HEAT,
  METRIC,
  type Measure,
  type PageUnits,
  SPECIFIC_HEAT,
  TEMPERATURE,
} from '$src/core/units';
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
  const row = (name: string, unit: string, own: Sourced | undefined, show: (value: number) => string) =>
    own ? [{ name, unit, text: show(own.value) }] : [];
  /** In the units of masses, or in those of lengths. */
  const measured = (name: string, { unit, toShown }: Measure, own: Sourced | undefined, decimals: number) =>
    row(name, unit, own, (value) => fixed(toShown(value), decimals));
  const [mass, length] = [units.mass, units.length];
  const range = (name: string, own: SourcedRange | undefined) =>
    own ? [{ name, unit: degrees, text: `${heat(own.low)}–${heat(own.high)}` }] : [];
  return [
    ...row('liquidus', degrees, thermal.liquidus, heat),
    ...row('solidus', degrees, thermal.solidus, heat),
    ...row('share solid at which a front stops', '%', thermal.coherency, percentNumber),
    ...measured('latent heat', LATENT_HEAT[mass], thermal.latentHeat, 0),
    ...measured('specific heat, liquid', SPECIFIC_HEAT[mass], thermal.liquidHeat, mass === 'kg' ? 0 : 3),
    ...measured('specific heat, solid', SPECIFIC_HEAT[mass], thermal.solidHeat, mass === 'kg' ? 0 : 3),
    ...measured('conductivity, solid', CONDUCTIVITY[length], thermal.solidConductivity, 0),
    ...measured('density, solid', DENSITY[mass], thermal.solidDensity, mass === 'kg' ? 0 : 4),
    ...row('shrinkage on freezing', '%', thermal.freezingShrinkage, shared),
    ...row('pattern contraction', '%', thermal.contraction, shared),
    ...row('emissivity, surface', '', thermal.emissivity, significant),
    ...range('usual pouring', thermal.pouringRange),
    ...range('usual die', thermal.dieRange),
  ];
}
