import { describe, expect, it } from 'vitest';
import { withPourAt } from '$src/cells/pourAt';
import { METRIC } from '$src/core/units';
import { alsoCovered } from '$src/report/study/alsoCovered';
import { namedAxes } from '$src/report/study/namedAxes';
import { planAt } from '$src/report/study/planAt';
import { pointFigures } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import { settableValues } from '$src/report/study/settableValues';
import { soundFinding } from '$src/report/study/soundFinding';
import { rangeWords } from '$src/report/study/soundRanges';
import type { StudyAxis } from '$src/report/study/study';
import { firstOf, sampleBook } from '../book/sample';
import { inventedRecord } from '../report/inventedRecord';
import { planOf } from './samplePlan';

const book = sampleBook();
const base = planOf(book, 'pour-1');
const mass: StudyAxis = { setting: 'charge.mass', from: 0.4, to: 1.4, points: 11 };
const axes = namedAxes([mass], base);
const figures = {
  ...pointFigures(inventedRecord()),
  outcome: 'filled and quiet' as const,
  lap: null,
  shareAtStart: 0,
};
const pointOf = (verdict: 'sound' | 'folds film'): PointResult => ({ figures: { ...figures, verdict } });
/** Sound from 0.6 to 1.0 kg by the points themselves. */
const results = new Map<number, PointResult>(
  Array.from({ length: 11 }, (_, point) => [point, pointOf(point < 2 || point > 6 ? 'folds film' : 'sound')]),
);
const study = { plan: base, axes, results };

/** The pour of the book that a point of the study is opened as. */
function openedAt(kilograms: number) {
  const values = settableValues(axes, { 'charge.mass': kilograms }, METRIC);
  const at = planAt(base, values);
  if (!('plan' in at)) throw new Error('There is no such pour.');
  const { book: next, id } = withPourAt(
    book,
    firstOf(book, 'pour').id,
    { base, values, plan: at.plan },
    'so',
  );
  return planOf(next, id);
}

describe('a study of another pour', () => {
  it('speaks of a pour that was opened from it', () => {
    const found = alsoCovered(study, openedAt(0.8))!;
    expect(found.setRegion).toBe('sound');
    const [range] = soundFinding(1, [found]).ranges;
    expect(range!.set).toBeCloseTo(0.8, 6);
    expect(rangeWords(range!)).toBe('0.600 kg to 1 kg');
    expect(found.margins!.map(({ meets }) => meets)).toEqual(['folds film', 'folds film']);
  });

  it('says how it calls one that is not sound', () => {
    const found = alsoCovered(study, openedAt(1.3))!;
    expect(found.margins).toBeNull();
    expect(soundFinding(1, [found]).without).toBe('none: folds film as set');
  });

  it('does not speak of one that lies outside it, or differs in more', () => {
    const opened = openedAt(0.8);
    expect(alsoCovered({ ...study, axes: [{ ...axes[0]!, from: 0.9 }] }, opened)).toBeNull();
    const wider = { ...opened, liquid: { ...opened.liquid, density: opened.liquid.density * 1.01 } };
    expect(alsoCovered(study, wider)).toBeNull();
    expect(
      alsoCovered(study, { ...opened, computation: { ...opened.computation, meshCells: 50 } }),
    ).not.toBeNull();
  });
});
