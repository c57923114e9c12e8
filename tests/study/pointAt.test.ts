import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readBook } from '$src/book/readBook';
import { type ChosenStudy, chooseStudy } from '$src/cli/chooseStudy';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { coarsePoints, gridOf, valuesAt } from '$src/report/study/grid';
import { planAt } from '$src/report/study/planAt';
import { pointAt } from '$src/report/study/pointAt';
import { pointResult } from '$src/report/study/pointFigures';
import { regionOf } from '$src/report/study/region';

function windowStudy(): ChosenStudy {
  const read = readBook(readFileSync('static/pour-window.pourbook.json', 'utf8'));
  const chosen = 'book' in read ? chooseStudy(read.book, 'Pour window of the wall') : read;
  if (!('plan' in chosen)) throw new Error('The book has no one study.');
  return chosen;
}

function poured(study: ChosenStudy, point: number): PourRecord {
  const at = planAt(study.plan, valuesAt(gridOf(study.head), point));
  if (!('plan' in at)) throw new Error('refused');
  const run = runPour(at.plan);
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}

describe('a die that the ladle fills in part', () => {
  const study = windowStudy();
  const grid = gridOf(study.head);
  const points = coarsePoints(grid);
  const regionAt = (point: number) => {
    const at = pointAt(study.plan, valuesAt(grid, point));
    return 'refused' in at ? regionOf(at) : null;
  };
  const known = points.filter((point) => regionAt(point) !== null);

  it('is known on a map before it is poured, as the pour would have it', () => {
    expect(known.length).toBeGreaterThan(4);
    for (const point of [known[0]!, known.at(-1)!]) {
      expect(regionAt(point)).toBe('in the die while ladling');
      expect(regionOf(pointResult(poured(study, point)))).toBe('in the die while ladling');
    }
  });

  it('is not said of a die that starts empty', () => {
    const first = points.find((point) => regionAt(point) === null)!;
    expect(poured(study, first).series.filledShare[0]).toBeLessThan(0.02);
  });

  it('is poured all the same on a curve, which shows figures of the end', () => {
    const { endsWhenDecided: _, ...computation } = study.plan.computation;
    const plan = { ...study.plan, computation };
    expect('plan' in pointAt(plan, valuesAt(grid, known[0]!))).toBe(true);
  });
});
