import {
  AREA,
  DENSITY,
  fromBar,
  fromCentistokes,
  fromDegrees,
  fromLitres,
  LENGTH,
  MASS,
  type Measure,
  type PageUnits,
  SPEED,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  toBar,
  toCentistokes,
  toDegrees,
  toLitres,
} from '$src/core/units';

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
  | 'temperature difference'
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
  | 'torque'
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
  /** Other units that may be typed with a number; it is then read in that unit. */
  readonly others: readonly Measure[];
}

const same = (value: number): number => value;
const plain = { signed: false, toShown: same, fromShown: same, others: [] };
const degrees = { toShown: toDegrees, fromShown: fromDegrees, others: [] };

type Fineness = Pick<Quantity, 'decimals' | 'step'>;

/** A quantity the page's units decide: the unit shown, and all others that may be typed. */
function inUnit<K extends string>(
  measures: Readonly<Record<K, Measure>>,
  shown: K,
  fineness: Readonly<Record<K, Fineness>>,
): Quantity {
  const all = Object.values<Measure>(measures);
  const others = all.filter((measure) => measure !== measures[shown]);
  return { ...measures[shown], ...fineness[shown], signed: false, others };
}

const FINE = {
  length: { mm: { decimals: [1, 3], step: 1 }, in: { decimals: [2, 4], step: 0.05 } },
  area: { mm: { decimals: [0, 2], step: 1 }, in: { decimals: [2, 5], step: 0.01 } },
  speed: { mm: { decimals: [2, 3], step: 0.01 }, in: { decimals: [1, 2], step: 0.5 } },
  density: { kg: { decimals: [0, 1], step: 10 }, lb: { decimals: [4, 5], step: 0.0005 } },
  mass: { kg: { decimals: [2, 4], step: 0.01 }, lb: { decimals: [2, 4], step: 0.02 } },
  temperature: { degC: { decimals: [0, 1], step: 5 }, degF: { decimals: [0, 1], step: 10 } },
} as const;

type Measured =
  | 'length'
  | 'level'
  | 'area'
  | 'speed'
  | 'mass'
  | 'density'
  | 'temperature'
  | 'temperature difference';

const OTHERS: Readonly<Record<Exclude<QuantityKind, Measured>, Quantity>> = {
  angle: { unit: '°', decimals: [1, 2], step: 1, signed: true, ...degrees },
  'contact angle': { unit: '°', decimals: [0, 1], step: 5, signed: false, ...degrees },
  rate: { unit: '°/s', decimals: [1, 2], step: 1, signed: false, ...degrees },
  time: { ...plain, unit: 's', decimals: [2, 3], step: 0.1 },
  viscosity: { ...plain, unit: 'Pa s', decimals: [4, 6], step: 0.0001 },
  'surface tension': { ...plain, unit: 'N/m', decimals: [2, 4], step: 0.01 },
  share: {
    ...plain,
    unit: '%',
    decimals: [0, 1],
    step: 5,
    toShown: (share) => share * 100,
    fromShown: (percent) => percent / 100,
  },
  count: { ...plain, unit: '', decimals: [0, 0], step: 1 },
  pressure: { ...plain, unit: 'bar', decimals: [0, 1], step: 5, toShown: toBar, fromShown: fromBar },
  volume: { ...plain, unit: 'l', decimals: [1, 3], step: 0.1, toShown: toLitres, fromShown: fromLitres },
  turns: { ...plain, unit: 'turns', decimals: [1, 2], step: 0.1 },
  ratio: { ...plain, unit: '', decimals: [1, 3], step: 0.01 },
  'valve coefficient': { ...plain, unit: 'm³/h', decimals: [2, 5], step: 0.01 },
  torque: { ...plain, unit: 'N·m', decimals: [0, 1], step: 5 },
  'rotary damping': { ...plain, unit: 'N·m·s', decimals: [0, 1], step: 10 },
  'heat transfer': { ...plain, unit: 'W/m²K', decimals: [0, 0], step: 50 },
  'kinematic viscosity': {
    ...plain,
    unit: 'mm²/s',
    decimals: [1, 2],
    step: 0.1,
    toShown: toCentistokes,
    fromShown: fromCentistokes,
  },
};

export function quantityOf(kind: QuantityKind, units: PageUnits): Quantity {
  switch (kind) {
    case 'length':
      return inUnit(LENGTH, units.length, FINE.length);
    case 'level':
      return { ...inUnit(LENGTH, units.length, FINE.length), signed: true };
    case 'area':
      return inUnit(AREA, units.length, FINE.area);
    case 'speed':
      return inUnit(SPEED, units.length, FINE.speed);
    case 'density':
      return inUnit(DENSITY, units.mass, FINE.density);
    case 'mass':
      return inUnit(MASS, units.mass, FINE.mass);
    case 'temperature':
      return inUnit(TEMPERATURE, units.temperature, FINE.temperature);
    case 'temperature difference':
      return inUnit(TEMPERATURE_DIFFERENCE, units.temperature, FINE.temperature);
    default:
      return OTHERS[kind];
  }
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

/** Kinds whose numbers lie on both sides of nought. */
export const isOnBothSides = (kind: QuantityKind): boolean => kind === 'angle' || kind === 'level';

/** What stands in a field, with the other sign. */
export function signTurned(text: string): string {
  const words = text.trim();
  return /^[-\u2212\u2013]/.test(words) ? words.slice(1).trim() : `\u2212${words.replace(/^\+\s*/, '')}`;
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/;
/** A fraction as on a rule, alone or after whole ones: 3/8, 1 3/8, 1-3/8. */
const FRACTION = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)$/;
/** ¼, ½, ¾ and their like. */
const SMALL_FRACTION = /[\u00bc-\u00be\u2150-\u215e]/g;
/** Marks people write for inches. */
const INCH_MARK = /(?:"|″|''|inch|inches)$/;

function tidied(text: string): string {
  return text
    .replace(SMALL_FRACTION, (small) => ` ${small.normalize('NFKC').replace('\u2044', '/')}`)
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/^([+-])\s+/, '$1')
    .trim()
    .replace(INCH_MARK, 'in');
}

const packed = (text: string): string => text.replace(/\s/g, '');

function withoutUnit(text: string, unit: string): string | null {
  const end = packed(unit);
  if (end === '' || !packed(text).endsWith(end)) return null;
  const letters = [...end].map((letter) => letter.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  return text.replace(new RegExp(`\\s*${letters.join('\\s*')}$`), '');
}

function bareNumber(text: string): number | null {
  const fraction = FRACTION.exec(text.trim());
  if (fraction) {
    const [, sign, whole, over, under] = fraction;
    return finite((sign === '-' ? -1 : 1) * (Number(whole ?? 0) + Number(over) / Number(under)));
  }
  const pointed = packed(text).replace(',', '.');
  return NUMBER.test(pointed) ? finite(Number(pointed)) : null;
}

/** A key that is held down types a number beyond all numbers, and a book that holds one cannot be kept. */
const finite = (number: number): number | null => (Number.isFinite(number) ? number : null);

/**
 * Reads what a person typed: comma or point, a fraction, a true minus or a dash, the unit with it or not.
 * Gives the value in the unit shown; null when it is no number.
 */
export function parseNumber(text: string, unit: string): number | null {
  const tidy = tidied(text);
  return bareNumber(withoutUnit(tidy, unit) ?? tidy);
}

/** As `parseNumber`, in SI; a number with another unit of the same kind ("1 3/8 in" among millimetres) is read in that. */
export function parseQuantity(text: string, quantity: Quantity): number | null {
  const shown = parseNumber(text, quantity.unit);
  if (shown !== null) return finite(quantity.fromShown(shown));
  for (const { unit, fromShown } of quantity.others) {
    const bare = withoutUnit(tidied(text), unit);
    const number = bare === null ? null : bareNumber(bare);
    if (number !== null) return finite(fromShown(number));
  }
  return null;
}
