import type { Issue } from '$src/core/issue';
import type { Metal } from '$src/core/metal/metal';
import type { NumberField, RangeField, TemperatureRange, ThermalMetal } from '$src/core/metal/thermal';
import { fromCelsius, toCelsius, toKilojoules } from '$src/core/units';
import { thermalOfMetal } from './thermalMetals';

interface Bound {
  readonly field: NumberField;
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly shown: (value: number) => number;
}

const asIs = (value: number): number => value;
const percent = (share: number): number => share * 100;
const TEMPERATURE = { low: fromCelsius(0), high: fromCelsius(2000), unit: ' °C', shown: toCelsius };
const HEAT = { low: 50, high: 5000, unit: ' J/kgK', shown: asIs };

/** Wide enough for any metal that is cast; outside it a unit has slipped. */
const BOUNDS: readonly Bound[] = [
  { field: 'liquidus', name: 'liquidus', ...TEMPERATURE },
  { field: 'solidus', name: 'solidus', ...TEMPERATURE },
  { field: 'latentHeat', name: 'latent heat', low: 1e4, high: 2e6, unit: ' kJ/kg', shown: toKilojoules },
  { field: 'liquidHeat', name: 'specific heat of the liquid', ...HEAT },
  { field: 'solidHeat', name: 'specific heat of the solid', ...HEAT },
  { field: 'solidDensity', name: 'density of the solid', low: 500, high: 20000, unit: ' kg/m³', shown: asIs },
  { field: 'solidConductivity', name: 'conductivity', low: 1, high: 500, unit: ' W/mK', shown: asIs },
  {
    field: 'coherency',
    name: 'share at which a front stops',
    low: 0.01,
    high: 0.99,
    unit: ' %',
    shown: percent,
  },
  {
    field: 'freezingShrinkage',
    name: 'shrinkage on freezing',
    low: 0,
    high: 0.12,
    unit: ' %',
    shown: percent,
  },
  { field: 'contraction', name: 'contraction', low: 0, high: 0.04, unit: ' %', shown: percent },
  { field: 'emissivity', name: 'emissivity', low: 0.01, high: 1, unit: '', shown: asIs },
];

const RANGES = [
  ['pouringRange', 'pouring'],
  ['dieRange', 'die'],
] as const;

/** What is wrong with what the user typed of a metal's freezing and heat; paths are relative to the metal. Empty when nothing is. */
export function checkThermal(metal: Metal): Issue[] {
  const thermal = thermalOfMetal(metal);
  const { thermal: own } = metal;
  if (!thermal || !own) return [];
  const outside = [
    ...BOUNDS.flatMap((bound) => (own[bound.field] ? checkBound(own[bound.field]!.value, bound) : [])),
    ...RANGES.flatMap(([field, name]) => (own[field] ? checkRange(field, name, own[field]) : [])),
  ];
  return outside.length > 0 ? outside : checkOrder(metal, thermal);
}

const issueAt = (field: string, message: string, remedy: string): Issue => ({
  path: `thermal.${field}`,
  message,
  remedy,
});

/** A hair of room, so that a value typed exactly at the limit survives the change of units. */
const ROOM = 1e-9;

function checkBound(value: number, { field, name, low, high, unit, shown }: Bound): Issue[] {
  const room = ROOM * high;
  if (value >= low - room && value <= high + room) return [];
  const message = `A ${name} of ${text(shown(value))}${unit} is out of range.`;
  return [
    issueAt(
      `${field}.value`,
      message,
      `Give ${text(shown(low))} to ${text(shown(high))}${unit}; check the unit.`,
    ),
  ];
}

function checkRange(field: RangeField, name: string, range: TemperatureRange): Issue[] {
  const { low, high } = TEMPERATURE;
  const beyond = (['low', 'high'] as const).filter((end) => !(range[end] >= low && range[end] <= high));
  if (beyond.length > 0)
    return beyond.map((end) =>
      issueAt(
        `${field}.${end}`,
        `A ${name} range that ${end === 'low' ? 'begins' : 'ends'} at ${celsius(range[end])} is out of range.`,
        `Give ${text(toCelsius(low))} to ${celsius(high)}; check the unit.`,
      ),
    );
  if (range.low < range.high) return [];
  return [
    issueAt(
      `${field}.high`,
      `The ${name} range ends at ${celsius(range.high)}, no higher than it begins.`,
      `Give more than ${celsius(range.low)}, or let it begin lower.`,
    ),
  ];
}

/** Whether the temperatures stand in order, told at a field that its user filled. */
function checkOrder(metal: Metal, { liquidus, solidus, pouringRange, dieRange }: ThermalMetal): Issue[] {
  const own = metal.thermal!;
  const pouring = metal.pouringTemperature.value;
  const issues: Issue[] = [];
  if (solidus > liquidus)
    issues.push(
      own.solidus
        ? issueAt(
            'solidus.value',
            `The solidus (${celsius(solidus)}) lies above the liquidus (${celsius(liquidus)}).`,
            `Give ${celsius(liquidus)} at most, or type a higher liquidus.`,
          )
        : issueAt(
            'liquidus.value',
            `The liquidus (${celsius(liquidus)}) lies below the solidus (${celsius(solidus)}).`,
            `Give ${celsius(solidus)} or more, or type the solidus of this alloy first.`,
          ),
    );
  if (own.liquidus && liquidus >= pouring)
    issues.push(
      issueAt(
        'liquidus.value',
        `The liquidus (${celsius(liquidus)}) is not below the pouring temperature (${celsius(pouring)}).`,
        `Give less than ${celsius(pouring)}, or type a higher pouring temperature.`,
      ),
    );
  if (pouringRange.high <= liquidus)
    issues.push(
      issueAt(
        'pouringRange.high',
        `Usual pouring ends at ${celsius(pouringRange.high)}, not above the liquidus (${celsius(liquidus)}).`,
        `Give more than ${celsius(liquidus)}: what is usual for this alloy.`,
      ),
    );
  if (dieRange.high >= solidus)
    issues.push(
      issueAt(
        'dieRange.high',
        `A die of ${celsius(dieRange.high)} is not below the solidus (${celsius(solidus)}): nothing would freeze.`,
        `Give less than ${celsius(solidus)}: what is usual for this alloy.`,
      ),
    );
  return issues;
}

const text = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '\u2212');
const celsius = (kelvins: number): string => `${text(Number(toCelsius(kelvins).toFixed(1)))} °C`;
