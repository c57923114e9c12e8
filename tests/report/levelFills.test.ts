import { expect, test } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { levelFills } from '$src/report/levelFills';
import { levelFronts } from '$src/report/levelFronts';
import { type inventedPlan, inventedRecord } from './inventedRecord';

const record = inventedRecord();
const withPlan = (part: Partial<typeof inventedPlan>) => ({ ...record, plan: { ...record.plan, ...part } });
const named = (...records: (typeof record)[]) =>
  records.map((one, index) => ({ name: `Pour ${'ABC'[index]}`, record: one }));
const namesOf = (...records: (typeof record)[]) => levelFills(named(...records)).map(({ name }) => name);

test('pours of one section and one charge share one level fill, whatever their tilt, vents and coats', () => {
  const { section, tilt } = record.plan;
  const coated = section.regions.map((region) => ({ ...region, transfer: 900 }));
  const other = withPlan({
    section: { ...section, vents: [], regions: coated },
    tilt: { ...tilt, smoothing: 0.4 } as typeof tilt,
  });
  expect(namesOf(record, other)).toEqual(['level fill']);
});

test('of pours that end at different inclinations the one turned furthest draws it', () => {
  const { series } = record;
  const until = series.inclination.findIndex((angle) => angle < fromDegrees(-5));
  const short = { ...record, series: { ...series, inclination: series.inclination.slice(0, until) } };
  const [one, ...more] = levelFills(named(short, record));
  expect(more).toEqual([]);
  expect(one!.curve).toEqual(levelFronts(record).withStand);
});

test('another charge, section, metal or start has a level fill of its own, called after its pours', () => {
  const { volume, liquid, section } = record.plan;
  expect(namesOf(record, withPlan({ volume: 0.9 * volume }))).toEqual([
    'level fill, Pour A',
    'level fill, Pour B',
  ]);
  expect(namesOf(record, withPlan({ liquid: { ...liquid, surfaceTension: 1.3 } }))).toHaveLength(2);
  expect(namesOf(record, withPlan({ section: { ...section, mouth: section.mouth + 0.01 } }))).toHaveLength(2);
  const inclination = record.series.inclination.slice(1);
  expect(namesOf(record, { ...record, series: { ...record.series, inclination } })).toHaveLength(2);
  expect(namesOf(record, withPlan({ volume: 0.9 * volume }), record)).toEqual([
    'level fill, Pour A and Pour C',
    'level fill, Pour B',
  ]);
});

test('level fills that a chart cannot tell apart share one line', () => {
  const { volume } = record.plan;
  expect(namesOf(record, withPlan({ volume: 1.0001 * volume }))).toEqual(['level fill']);
});
