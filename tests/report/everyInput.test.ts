import { describe, expect, it } from 'vitest';
import { DIE_CONDITIONS } from '$src/core/flow/conditions';
import { freezingOf } from '$src/core/heat/freezing';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import { A356 as A356_HEAT } from '$src/core/heat/thermalAluminium';
import type { PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromCelsius } from '$src/core/units';
import { compare } from '$src/report/compare';
import { inventedPlan, inventedRecord } from './inventedRecord';

/** No input of a pour is left out of a comparison: each leaf of a plan, changed by itself, is named. */

const heat: HeatPlan = {
  freezing: freezingOf(A356_HEAT, 2400),
  startTemperature: fromCelsius(715),
  regions: [
    { transfer: 1000, dieTemperature: fromCelsius(300), later: { after: 3, transfer: 700 } },
    { transfer: 1850, dieTemperature: fromCelsius(350), later: null },
  ],
  dieSurface: 8000,
  lapTemperature: fromCelsius(613),
  own: {
    base: 'A356',
    solidConductivity: 140,
    freezingShrinkage: 0.05,
    pouringRange: { low: fromCelsius(690), high: fromCelsius(750) },
    dieRange: { low: fromCelsius(310), high: fromCelsius(390) },
  },
};

/** With everything a plan may have, a stepped basin floor included. */
const full: PourPlan = {
  ...inventedPlan,
  section: {
    ...inventedPlan.section,
    floor: [
      { x: 0, y: -0.01 },
      { x: 0.06, y: -0.02 },
      { x: 0.155, y: -0.02 },
      { x: 0.155, y: 0 },
      { x: 0.25, y: 0.001 },
      { x: 0.355, y: 0 },
    ],
    regions: inventedPlan.section.regions.map((region) => ({
      ...region,
      widthAtEnd: 0.9 * region.width,
      transfer: 1200,
      dieTemperature: 600,
    })),
  },
  computation: {
    ...inventedPlan.computation,
    gas: 'vents',
    conditions: DIE_CONDITIONS,
    endsWhenDecided: false,
  },
  heat,
};

const { limits } = inventedPlan.tilt;
const knots = [
  { time: 0, inclination: 0.5 },
  { time: 8, inclination: -1.5 },
];
const TILTS: readonly Tilt[] = [
  inventedPlan.tilt,
  { kind: 'steady', start: 0.5, end: -1.5, rate: 0.3, smoothing: 0.15, limits },
  {
    kind: 'measured',
    start: 0.5,
    knots,
    limits,
    origin: 'file',
    band: { count: 4, start: 0.01, time: 0.2, rate: 0.01 },
    readings: { smoothedOver: 0.2, scatter: 0.001, before: 4, after: 5 },
  },
  { kind: 'front-led', start: 0.5, end: -1.5, share: 0.6, homeWithin: 3, limits },
  { kind: 'machine', start: 0.5, end: -1.5, limits, machine: BENCH_MACHINE },
];

type Path = readonly string[];

/** What a thing is called decides nothing; what kind it is of is another plan, and no changed leaf of this one. */
const NO_INPUT = ['name', 'kind', 'by', 'wall'];

function leaves(value: unknown, path: Path = []): Path[] {
  if (value === null || value === undefined) return [];
  if (typeof value !== 'object') return NO_INPUT.includes(path.at(-1)!) ? [] : [path];
  return Object.entries(value).flatMap(([key, part]) => leaves(part, [...path, key]));
}

const COUNTED = ['from', 'to', 'cavities', 'meshCells', 'count'];

function otherThan(value: unknown, key: string): unknown {
  if (typeof value === 'boolean') return !value;
  if (typeof value === 'string') return value === 'vents' ? 'free' : `${value} changed`;
  const number = value as number;
  return COUNTED.includes(key) && Number.isInteger(number)
    ? number + 1
    : number + 0.03 * Math.abs(number) + 0.0003;
}

function changedAt<T>(value: T, [key, ...rest]: Path, whole: string): T {
  if (key === undefined) return otherThan(value, whole) as T;
  const part = changedAt((value as Record<string, unknown>)[key], rest, key);
  if (Array.isArray(value)) return value.with(Number(key), part) as T;
  return { ...value, [key]: part };
}

describe.each(TILTS.map((tilt) => [tilt.kind, { ...full, tilt }] as const))(
  'a plan with a %s tilt',
  (_, plan) => {
    const base = { name: 'As it is', record: inventedRecord({ plan }) };
    it.each(leaves(plan).map((path) => [path.join('.'), path] as const))(
      'is compared by its %s',
      (_name, path) => {
        const changed = changedAt(plan, path, '');
        expect(planHash(changed)).not.toBe(planHash(plan));
        const { differs, reasons } = compare([
          base,
          { name: 'Changed', record: inventedRecord({ plan: changed }) },
        ]);
        expect(differs.map(({ name }) => name)).not.toEqual([]);
        for (const { texts } of differs) expect(new Set(texts).size).toBe(2);
        expect(reasons[0]!.name).not.toBe('nothing differs');
      },
    );
  },
);

describe('a comparison of pours with heat', () => {
  const pour = (name: string, kelvin: number, margin: number) => ({
    name,
    record: inventedRecord({
      plan: { ...full, heat: { ...heat, startTemperature: fromCelsius(kelvin) } },
      figures: {
        ...inventedRecord().figures,
        lap: { kind: 'none' as const, margin },
        arrivingTemperature: fromCelsius(kelvin - 50),
      },
    }),
  });

  it('names the metal when the tilt begins, how warm the front arrives and what it has left', () => {
    const { differs, figures, reasons } = compare([pour('Hot', 715, 1.5), pour('Cool', 680, 0.4)]);
    expect(differs).toEqual([{ name: 'metal as the tilt begins', texts: ['715 °C', '680 °C'] }]);
    expect(reasons[0]!.line).toBe('Only the metal as the tilt begins: what changes, changes by it.');
    const by = new Map(figures.map(({ key, differences }) => [key, differences[1]]));
    expect(by.get('arriving_temperature_C')).toBe('35 °C colder');
    expect(by.get('lap_margin_s')).toBe('1.10 s less');
  });

  it('tells them in the units of the book', () => {
    const units = { length: 'in', mass: 'lb', temperature: 'degF' } as const;
    const { differs, figures } = compare([pour('Hot', 715, 1.5), pour('Cool', 680, 0.4)], units);
    expect(differs[0]!.texts).toEqual(['1319 °F', '1256 °F']);
    const arriving = figures.find(({ key }) => key === 'arriving_temperature_C')!;
    expect(arriving.differences[1]).toBe('63 °F colder');
  });

  it('has the verdict of each', () => {
    const folding = pour('Folding', 715, 1.5);
    const { verdicts } = compare([
      pour('Hot', 715, 1.5),
      {
        ...folding,
        record: {
          ...folding.record,
          figures: { ...folding.record.figures, peakFrontSpeed: 0.9 },
          band: null,
        },
      },
    ]);
    expect(verdicts[1]).toBe('Folds film');
    expect(verdicts[0]).not.toBe(verdicts[1]);
  });

  it('counts another metal as one thing, with all that comes with it', () => {
    const other = {
      ...full,
      liquid: { density: 7000, viscosity: 0.006, surfaceTension: 1.2, contactAngle: 2, criticalSpeed: 0.4 },
    };
    const { reasons, differs } = compare([
      { name: 'One', record: inventedRecord({ plan: full }) },
      { name: 'Other', record: inventedRecord({ plan: { ...other, volume: (full.volume * 2400) / 7000 } }) },
    ]);
    expect(differs.length).toBeGreaterThan(3);
    expect(reasons[0]!.line).toBe('Only the metal: what changes, changes by it.');
  });
});
