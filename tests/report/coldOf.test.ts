import { describe, expect, it } from 'vitest';
import type { Fold, PourRecord } from '$src/core/pour/record';
import { cavityVolume } from '$src/core/section/cavity';
import { coldOf } from '$src/report/coldOf';
import { pointFigures } from '$src/report/study/pointFigures';
import { regionOf } from '$src/report/study/region';
import { verdict } from '$src/report/verdict';
import { inventedFigures, inventedRecord } from './inventedRecord';

const fold = (kind: Fold['kind'], time: number): Fold => ({
  ...inventedRecord().folds[0]!,
  kind,
  time,
  size: 'slight',
});
const unfilled = { ...inventedFigures, arrivalTime: null, filledTime: null, fillTime: null, finalShare: 0.8 };

/** The invented front comes to rest at some 3.5 s. */
function spoilt(lap: 'laps' | 'misrun', gas: number | null, folds: readonly Fold[] = []): PourRecord {
  const held = gas === null ? [] : [fold('gas sealed in', gas)];
  const figures = { ...unfilled, gasHeld: gas !== null, lap: { kind: lap, margin: -1 } } as const;
  return inventedRecord({ folds: [...held, ...folds], figures });
}
const told = (record: PourRecord) => [
  coldOf(record),
  verdict(record).kind,
  regionOf({ figures: pointFigures(record) }),
];

describe('what cold did to a pour', () => {
  it('is a misrun where nothing else keeps the die from filling', () => {
    expect(told(spoilt('misrun', null))).toEqual(['misrun', 'misrun', 'misrun']);
  });

  it('is none where gas was shut in before the front came to rest: what is held up goes stiff in the end', () => {
    expect(told(spoilt('misrun', 2))).toEqual(['none', 'gas held', 'gas held']);
    expect(verdict(spoilt('misrun', 2)).reasons.map(({ name }) => name)).not.toContain('misrun');
  });

  it('is a misrun where the front came to rest first', () => {
    expect(told(spoilt('misrun', 5))).toEqual(['misrun', 'misrun', 'misrun']);
  });

  it('is none where the front had reached the die end before gas was shut in: it has nowhere to go', () => {
    const record = spoilt('misrun', 5);
    expect(told({ ...record, figures: { ...record.figures, arrivalTime: 3.5 } })[0]).toBe('none');
  });

  it('is none where metal is missing', () => {
    const record = spoilt('misrun', null);
    const plan = { ...record.plan, volume: 0.5 * cavityVolume(record.plan.section) };
    expect(told({ ...record, plan })).toEqual(['none', 'not filled', 'not filled']);
  });

  it('is none where so much had spilled before the front came to rest that metal is missing, and one where it spilled after', () => {
    const record = spoilt('misrun', null);
    const spare = record.plan.volume - cavityVolume(record.plan.section);
    const from = (time: number) => ({
      ...record,
      series: { ...record.series, spilled: record.series.time.map((at) => (at >= time ? 1.1 * spare : 0)) },
    });
    expect(told(from(1))).toEqual(['none', 'not filled', 'not filled']);
    expect(told(from(3.9))).toEqual(['misrun', 'misrun', 'misrun']);
  });

  it('is no lap where a place never fills and none was seen', () => {
    expect(told(spoilt('laps', 2))).toEqual(['none', 'gas held', 'gas held']);
    expect(told(spoilt('laps', null))).toEqual(['none', 'not filled', 'not filled']);
    expect(told(spoilt('laps', null, [fold('lap', 3)]))).toEqual(['laps', 'laps', 'laps']);
  });

  it('is a lap in a full die whose slowest place filled too late', () => {
    const figures = { ...inventedFigures, lap: { kind: 'laps', margin: -0.2 } } as const;
    expect(told(inventedRecord({ folds: [], figures }))).toEqual(['laps', 'laps', 'laps']);
  });
});
