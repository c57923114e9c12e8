import {
  fromBar,
  fromCelsius,
  fromCentistokes,
  fromDegrees,
  fromInches,
  fromLitres,
  fromMillimetres,
  fromSquareMillimetres,
  toBar,
  toCelsius,
  toCentistokes,
  toDegrees,
  toInches,
  toLitres,
  toMillimetres,
  toSquareMillimetres,
} from '$src/core/units';
import type { LengthUnit } from '../bench.svelte';

/** What a number on the page measures; decides its unit, its decimals and its arrow-key step. */
export type QuantityKind =
  | 'length'
  /** A length above (+) or below (−) something. */
  | 'level'
  | 'angle'
  | 'contact angle'
  | 'rate'
  | 'time'
  | 'mass'
  | 'temperature'
  | 'density'
  | 'viscosity'
  | 'surface tension'
  | 'speed'
  | 'area'
  | 'share'
  | 'count'
  | 'pressure'
  | 'volume'
  | 'turns'
  | 'ratio'
  | 'valve coefficient'
  | 'rotary damping'
  | 'kinematic viscosity'
  | 'heat transfer';

export interface Quantity {
  readonly unit: string;
  /** Decimals always shown, and at most shown. */
  readonly decimals: readonly [least: number, most: number];
  /** Step of the arrow keys, in the unit shown. */
  readonly step: number;
  /** Positive values carry a plus. */
  readonly signed: boolean;
  readonly toShown: (si: number) => number;
  readonly fromShown: (shown: number) => number;
}

const same = (value: number): number => value;
const plain = { signed: false, toShown: same, fromShown: same };
const degrees = { toShown: toDegrees, fromShown: fromDegrees };

const LENGTHS: Readonly<Record<LengthUnit, Quantity>> = {
  mm: {
    unit: 'mm',
    decimals: [1, 3],
    step: 1,
    signed: false,
    toShown: toMillimetres,
    fromShown: fromMillimetres,
  },
  in: { unit: 'in', decimals: [2, 4], step: 0.05, signed: false, toShown: toInches, fromShown: fromInches },
};

const OTHERS: Readonly<Record<Exclude<QuantityKind, 'length' | 'level'>, Quantity>> = {
  angle: { unit: '°', decimals: [1, 2], step: 1, signed: true, ...degrees },
  'contact angle': { unit: '°', decimals: [0, 1], step: 5, signed: false, ...degrees },
  rate: { unit: '°/s', decimals: [1, 2], step: 1, signed: false, ...degrees },
  time: { ...plain, unit: 's', decimals: [2, 3], step: 0.1 },
  mass: { ...plain, unit: 'kg', decimals: [2, 4], step: 0.01 },
  temperature: {
    unit: '°C',
    decimals: [0, 1],
    step: 5,
    signed: false,
    toShown: toCelsius,
    fromShown: fromCelsius,
  },
  density: { ...plain, unit: 'kg/m³', decimals: [0, 1], step: 10 },
  viscosity: { ...plain, unit: 'Pa s', decimals: [4, 6], step: 0.0001 },
  'surface tension': { ...plain, unit: 'N/m', decimals: [2, 4], step: 0.01 },
  speed: { ...plain, unit: 'm/s', decimals: [2, 3], step: 0.01 },
  area: {
    unit: 'mm²',
    decimals: [0, 2],
    step: 1,
    signed: false,
    toShown: toSquareMillimetres,
    fromShown: fromSquareMillimetres,
  },
  share: {
    unit: '%',
    decimals: [0, 1],
    step: 5,
    signed: false,
    toShown: (share) => share * 100,
    fromShown: (percent) => percent / 100,
  },
  count: { ...plain, unit: '', decimals: [0, 0], step: 1 },
  pressure: { unit: 'bar', decimals: [0, 1], step: 5, signed: false, toShown: toBar, fromShown: fromBar },
  volume: { unit: 'l', decimals: [1, 3], step: 0.1, signed: false, toShown: toLitres, fromShown: fromLitres },
  turns: { ...plain, unit: 'turns', decimals: [1, 2], step: 0.1 },
  ratio: { ...plain, unit: '', decimals: [1, 3], step: 0.01 },
  'valve coefficient': { ...plain, unit: 'm³/h', decimals: [2, 5], step: 0.01 },
  'rotary damping': { ...plain, unit: 'N·m·s', decimals: [0, 1], step: 10 },
  'heat transfer': { ...plain, unit: 'W/m²K', decimals: [0, 1], step: 50 },
  'kinematic viscosity': {
    unit: 'mm²/s',
    decimals: [1, 2],
    step: 0.1,
    signed: false,
    toShown: toCentistokes,
    fromShown: fromCentistokes,
  },
};

export function quantityOf(kind: QuantityKind, lengthUnit: LengthUnit): Quantity {
  if (kind === 'level') return { ...LENGTHS[lengthUnit], signed: true };
  return kind === 'length' ? LENGTHS[lengthUnit] : OTHERS[kind];
}

/** As shown in a field: no more decimals than needed, a true minus, a plus where the sign matters. */
export function quantityText(si: number, quantity: Quantity): string {
  const [least, most] = quantity.decimals;
  const rounded = quantity.toShown(si).toFixed(most);
  const dot = rounded.indexOf('.');
  const keep = dot < 0 ? rounded.length : dot + 1 + least;
  const digits = dot < 0 ? rounded : rounded.slice(0, keep) + rounded.slice(keep).replace(/0+$/, '');
  const text = digits.replace(/\.$/, '');
  if (Number(text) === 0) return text.replace('-', '');
  return quantity.signed && Number(text) > 0 ? `+${text}` : text.replace('-', '\u2212');
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/**
 * Reads what a person typed: comma or point, a true minus or a dash, the unit with it or not.
 * Gives the value in the unit shown; null when it is no number.
 */
export function parseNumber(text: string, unit: string): number | null {
  const bare = text.replace(/\s/g, '').replace(/[\u2212\u2013]/g, '-');
  const withoutUnit =
    unit && bare.endsWith(unit.replace(/\s/g, '')) ? bare.slice(0, -unit.replace(/\s/g, '').length) : bare;
  const pointed = withoutUnit.replace(',', '.');
  return NUMBER.test(pointed) ? Number(pointed) : null;
}
