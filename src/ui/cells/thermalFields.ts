import type { NumberField, RangeField } from '$src/core/metal/thermal';
import type { QuantityKind } from '../inputs/quantity';

/** A property of a metal's freezing and heat as it stands in its table, in the order a founder reads it. */
export interface ThermalRow {
  readonly field: NumberField;
  readonly name: string;
  readonly kind: QuantityKind;
}

export type End = 'low' | 'high';

export const THERMAL_ROWS: readonly ThermalRow[] = [
  { field: 'liquidus', name: 'liquidus', kind: 'temperature' },
  { field: 'solidus', name: 'solidus', kind: 'temperature' },
  { field: 'coherency', name: 'share solid at which a front stops', kind: 'share' },
  { field: 'latentHeat', name: 'latent heat', kind: 'latent heat' },
  { field: 'liquidHeat', name: 'specific heat, liquid', kind: 'specific heat' },
  { field: 'solidHeat', name: 'specific heat, solid', kind: 'specific heat' },
  { field: 'solidConductivity', name: 'conductivity, solid', kind: 'conductivity' },
  { field: 'solidDensity', name: 'density, solid', kind: 'density' },
  { field: 'freezingShrinkage', name: 'shrinkage on freezing', kind: 'small share' },
  { field: 'contraction', name: 'pattern contraction', kind: 'small share' },
  { field: 'emissivity', name: 'emissivity, surface', kind: 'ratio' },
];

export const RANGE_ROWS: readonly {
  readonly field: RangeField;
  readonly name: string;
}[] = [
  { field: 'pouringRange', name: 'usual pouring' },
  { field: 'dieRange', name: 'usual die' },
];

export const ENDS: readonly { readonly end: End; readonly word: string }[] = [
  { end: 'low', word: 'from' },
  { end: 'high', word: 'to' },
];

/** Paths of the fields of the table, which tell their own issue. */
export const THERMAL_PATHS: readonly string[] = [
  ...THERMAL_ROWS.map(({ field }) => `thermal.${field}.value`),
  ...RANGE_ROWS.flatMap(({ field }) => ENDS.map(({ end }) => `thermal.${field}.${end}`)),
];
