import type { Issue } from '$src/core/issue';
import { fromCelsius, fromDegrees, toCelsius, toDegrees } from '$src/core/units';
import type { Metal, Sourced } from './metal';

interface Bound {
  readonly field: keyof Metal &
    ('density' | 'viscosity' | 'surfaceTension' | 'contactAngle' | 'pouringTemperature');
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly shown: (value: number) => number;
}

const asIs = (value: number): number => value;

/** Wide enough for any casting metal and for water as a check; outside it a unit has slipped. */
const BOUNDS: readonly Bound[] = [
  { field: 'density', name: 'density', low: 500, high: 20000, unit: ' kg/m³', shown: asIs },
  { field: 'viscosity', name: 'viscosity', low: 1e-5, high: 1, unit: ' Pa s', shown: asIs },
  { field: 'surfaceTension', name: 'surface tension', low: 0.01, high: 3, unit: ' N/m', shown: asIs },
  {
    field: 'contactAngle',
    name: 'contact angle',
    low: fromDegrees(60),
    high: fromDegrees(180),
    unit: '°',
    shown: toDegrees,
  },
  {
    field: 'pouringTemperature',
    name: 'pouring temperature',
    low: fromCelsius(0),
    high: fromCelsius(2000),
    unit: ' °C',
    shown: toCelsius,
  },
];
const OVERRIDE = { low: 0.05, high: 5 };

/** What is wrong with a metal; paths are relative to the metal, e.g. `density.value`. Empty when nothing is. */
export function checkMetal(metal: Metal): Issue[] {
  return [
    ...BOUNDS.flatMap((bound) => checkBound(metal[bound.field], bound)),
    ...checkOverride(metal.criticalSpeedOverride),
  ];
}

function checkBound(property: Sourced, bound: Bound): Issue[] {
  const path = `${bound.field}.value`;
  const range = `${text(bound.shown(bound.low))} to ${text(bound.shown(bound.high))}${bound.unit}`;
  if (!Number.isFinite(property.value)) {
    return [{ path, message: `The ${bound.name} is not a number.`, remedy: `Type a number, ${range}.` }];
  }
  // A hair of room, so that a value typed exactly at the limit survives the change of units.
  const room = 1e-9 * bound.high;
  if (property.value >= bound.low - room && property.value <= bound.high + room) return [];
  const message = `A ${bound.name} of ${text(bound.shown(property.value))}${bound.unit} is out of range.`;
  return [{ path, message, remedy: `Give ${range}; check the unit.` }];
}

function checkOverride(speed: number | null): Issue[] {
  if (speed === null || (speed >= OVERRIDE.low && speed <= OVERRIDE.high)) return [];
  return [
    {
      path: 'criticalSpeedOverride',
      message: 'The critical speed typed in is out of range.',
      remedy: `Give ${OVERRIDE.low} to ${OVERRIDE.high} m/s, or leave it empty to have it worked out.`,
    },
  ];
}

function text(value: number): string {
  return String(Number(value.toPrecision(6)));
}
