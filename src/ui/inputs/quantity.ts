import { SIZES } from '$src/core/section/sizes';
import {
  AREA,
  CONDUCTIVITY,
  DENSITY,
  fromBar,
  fromCelsius,
  fromCentistokes,
  fromDegrees,
  fromLitres,
  HEAT_TRANSFER,
  LATENT_HEAT,
  LENGTH,
  MASS,
  type Measure,
  type PageUnits,
  SPECIFIC_HEAT,
  SPEED,
  SURFACE_TENSION,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  TYPED_UNITS,
  type TypedUnit,
  toBar,
  toCentistokes,
  toDegrees,
  toLitres,
  VISCOSITY,
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
  | 'heat transfer'
  | 'small share'
  | 'latent heat'
  | 'specific heat'
  | 'conductivity';

export type Possible = readonly [least: number, most: number];

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
  readonly others: readonly TypedUnit[];
  /** Least and most that it can be at all, in SI: tells thousands from decimals, and refuses nothing. */
  readonly possible: Possible;
  /** It is counted, so that a part of one is never meant. */
  readonly whole?: true;
}

const same = (value: number): number => value;
const ANY: Possible = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
const plain = { signed: false, toShown: same, fromShown: same, others: [], possible: ANY };
const percent = {
  ...plain,
  unit: '%',
  toShown: (share: number) => share * 100,
  fromShown: (typed: number) => typed / 100,
};
const degrees = { toShown: toDegrees, fromShown: fromDegrees, others: [] };
const LENGTHS: Possible = [-SIZES.most, SIZES.most];
const HALF_TURN: Possible = [-Math.PI, Math.PI];
/** Of any liquid metal, and of water. */
const DENSITIES: Possible = [500, 20_000];
/** From ice; nothing that is poured is asked here, so that there is no end. */
const TEMPERATURES: Possible = [fromCelsius(0), Number.POSITIVE_INFINITY];
const SPEEDS: Possible = [-20, 20];
const TENSIONS: Possible = [0, 3];

type Fineness = Pick<Quantity, 'decimals' | 'step'>;

/** A quantity the page's units decide: the unit shown, and all others that may be typed. */
function inUnit<K extends string>(
  measures: Readonly<Record<K, Measure>>,
  shown: K,
  fineness: Readonly<Record<K, Fineness>>,
  typed: readonly TypedUnit[] = [],
  possible: Possible = ANY,
): Quantity {
  const all = Object.values<Measure>(measures);
  const others = [...all.filter((measure) => measure !== measures[shown]), ...typed];
  return { ...measures[shown], ...fineness[shown], signed: false, others, possible };
}

const FINE = {
  length: { mm: { decimals: [1, 3], step: 1 }, in: { decimals: [2, 4], step: 0.05 } },
  area: { mm: { decimals: [0, 2], step: 1 }, in: { decimals: [2, 5], step: 0.01 } },
  speed: { mm: { decimals: [2, 3], step: 0.01 }, in: { decimals: [1, 2], step: 0.5 } },
  density: { kg: { decimals: [0, 1], step: 10 }, lb: { decimals: [4, 5], step: 0.0005 } },
  mass: { kg: { decimals: [2, 4], step: 0.01 }, lb: { decimals: [2, 4], step: 0.02 } },
  'heat transfer': { mm: { decimals: [0, 0], step: 50 }, in: { decimals: [0, 1], step: 10 } },
  'surface tension': { mm: { decimals: [2, 4], step: 0.01 }, in: { decimals: [0, 1], step: 10 } },
  'latent heat': { kg: { decimals: [0, 1], step: 5 }, lb: { decimals: [0, 1], step: 2 } },
  'specific heat': { kg: { decimals: [0, 1], step: 10 }, lb: { decimals: [3, 5], step: 0.005 } },
  conductivity: { mm: { decimals: [0, 1], step: 1 }, in: { decimals: [0, 2], step: 1 } },
  viscosity: { mm: { decimals: [4, 6], step: 0.0001 }, in: { decimals: [1, 3], step: 0.1 } },
  temperature: { degC: { decimals: [0, 1], step: 5 }, degF: { decimals: [0, 1], step: 10 } },
} as const;

type Measured =
  | 'length'
  | 'level'
  | 'area'
  | 'speed'
  | 'mass'
  | 'density'
  | 'heat transfer'
  | 'surface tension'
  | 'latent heat'
  | 'specific heat'
  | 'conductivity'
  | 'viscosity'
  | 'temperature'
  | 'temperature difference';

const OTHERS: Readonly<Record<Exclude<QuantityKind, Measured>, Quantity>> = {
  angle: { unit: '°', decimals: [1, 2], step: 1, signed: true, ...degrees, possible: HALF_TURN },
  'contact angle': { unit: '°', decimals: [0, 1], step: 5, signed: false, ...degrees, possible: HALF_TURN },
  rate: { unit: '°/s', decimals: [1, 2], step: 1, signed: false, ...degrees, possible: HALF_TURN },
  time: { ...plain, unit: 's', decimals: [2, 3], step: 0.1, others: TYPED_UNITS.time },
  share: { ...percent, decimals: [0, 1], step: 5, possible: [0, 5] },
  /** A few per cent at most. */
  'small share': { ...percent, decimals: [1, 2], step: 0.1, possible: [0, 0.5] },
  // A part of one is refused where it stands, and is shown until then.
  count: { ...plain, unit: '', decimals: [0, 3], step: 1, whole: true },
  pressure: {
    ...plain,
    unit: 'bar',
    decimals: [0, 1],
    step: 5,
    toShown: toBar,
    fromShown: fromBar,
    others: TYPED_UNITS.pressure,
  },
  volume: {
    ...plain,
    unit: 'l',
    decimals: [1, 3],
    step: 0.1,
    toShown: toLitres,
    fromShown: fromLitres,
    others: TYPED_UNITS.volume,
  },
  turns: { ...plain, unit: 'turns', decimals: [1, 2], step: 0.1 },
  ratio: { ...plain, unit: '', decimals: [1, 3], step: 0.01 },
  'valve coefficient': { ...plain, unit: 'm³/h', decimals: [2, 5], step: 0.01 },
  torque: { ...plain, unit: 'N·m', decimals: [0, 1], step: 5 },
  'rotary damping': { ...plain, unit: 'N·m·s', decimals: [0, 1], step: 10 },
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
      return inUnit(LENGTH, units.length, FINE.length, TYPED_UNITS.length, LENGTHS);
    case 'level':
      return { ...inUnit(LENGTH, units.length, FINE.length, TYPED_UNITS.length, LENGTHS), signed: true };
    case 'area':
      return inUnit(AREA, units.length, FINE.area, TYPED_UNITS.area);
    case 'speed':
      return inUnit(SPEED, units.length, FINE.speed, TYPED_UNITS.speed, SPEEDS);
    case 'density':
      return inUnit(DENSITY, units.mass, FINE.density, [], DENSITIES);
    case 'heat transfer':
      // Nobody knows a part of a watt, so that three decimals part thousands; a Btu is larger.
      return {
        ...inUnit(HEAT_TRANSFER, units.length, FINE['heat transfer']),
        ...(units.length === 'mm' && { whole: true }),
      };
    case 'surface tension':
      return inUnit(SURFACE_TENSION, units.length, FINE['surface tension'], [], TENSIONS);
    case 'latent heat':
      return inUnit(LATENT_HEAT, units.mass, FINE[kind], TYPED_UNITS.latentHeat, [1e4, 2e6]);
    case 'specific heat':
      return inUnit(SPECIFIC_HEAT, units.mass, FINE[kind], TYPED_UNITS.specificHeat, [50, 5000]);
    case 'conductivity':
      return inUnit(CONDUCTIVITY, units.length, FINE[kind], [], [1, 500]);
    case 'viscosity':
      return inUnit(VISCOSITY, units.length, FINE[kind], TYPED_UNITS.viscosity, [0, 1]);
    case 'mass':
      return inUnit(MASS, units.mass, FINE.mass, TYPED_UNITS.mass);
    case 'temperature':
      return inUnit(TEMPERATURE, units.temperature, FINE.temperature, TYPED_UNITS.temperature, TEMPERATURES);
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
