import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readBook } from '$src/book/readBook';
import { chooseStudy } from '$src/cli/chooseStudy';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { fromDegrees } from '$src/core/units';
import { planAt } from '$src/report/study/planAt';
import { pointResult } from '$src/report/study/pointFigures';
import { type Region, regionOf } from '$src/report/study/region';
import { studyPlan } from '$src/report/study/studyPlan';

/** Plan of the class book's pour window on a coarse mesh. */
function windowPlan(): PourPlan {
  const read = readBook(readFileSync('static/class-window.pourbook.json', 'utf8'));
  if (!('book' in read)) throw new Error('The class book cannot be read.');
  const chosen = chooseStudy(read.book, null);
  if (!('plan' in chosen)) throw new Error('The class book has no one study.');
  return { ...chosen.plan, computation: { ...chosen.plan.computation, meshCells: 40 } };
}

function recordAt(seconds: number, endsWhenDecided: boolean): PourRecord {
  const at = planAt(windowPlan(), { 'tilt.time': seconds, 'tilt.start': fromDegrees(25) });
  if (!('plan' in at)) throw new Error('refused');
  const { plan } = at;
  const run = runPour({ ...plan, computation: { ...plan.computation, endsWhenDecided } });
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}

const lengthOf = (record: PourRecord): number => record.series.time.at(-1)!;

test.each<[seconds: number, region: Region]>([
  [11, 'sound'],
  [30, 'misrun'],
])(
  'a pour of %d s that ends once it is decided lies in the region of the whole pour: %s',
  (seconds, region) => {
    const [cut, whole] = [recordAt(seconds, true), recordAt(seconds, false)];
    expect([regionOf(pointResult(cut)), regionOf(pointResult(whole))]).toEqual([region, region]);
    expect(cut.figures.peakFrontSpeed).toBe(whole.figures.peakFrontSpeed);
    expect(cut.figures.filledTime).toBe(whole.figures.filledTime);
    expect(lengthOf(cut)).toBeLessThan(0.8 * lengthOf(whole));
  },
);

test('the plan of a map ends once it is decided, that of a curve runs through', () => {
  const [axis] = [{ setting: 'tilt.time', from: 2, to: 30, points: 8 }];
  const { endsWhenDecided: _, ...computation } = windowPlan().computation;
  const plan = { ...windowPlan(), computation };
  const ends = (axes: readonly (typeof axis)[]) =>
    studyPlan(plan, { axes, meshCells: 40 }).computation.endsWhenDecided ?? false;
  expect([ends([axis, axis]), ends([axis])]).toEqual([true, false]);
});
