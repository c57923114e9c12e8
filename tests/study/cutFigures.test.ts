import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readBook } from '$src/book/readBook';
import { evaluateBook } from '$src/cells/evaluate';
import { chooseStudy } from '$src/cli/chooseStudy';
import type { PourPlan } from '$src/core/pour/plan';
import { runPour } from '$src/core/pour/runPour';
import { gridOf, valuesAt } from '$src/report/study/grid';
import { planAt } from '$src/report/study/planAt';
import { cutWords, endFigure, type PointFigures, pointResult } from '$src/report/study/pointFigures';
import { studyCsv } from '$src/report/study/studyFile';

function read(file: string) {
  const found = readBook(readFileSync(`static/${file}.pourbook.json`, 'utf8'));
  if (!('book' in found)) throw new Error(`${file} cannot be read.`);
  return found.book;
}

function pourOf(file: string, id: string): PourPlan {
  const evaluation = evaluateBook(read(file)).get(id);
  if (evaluation?.state !== 'needs a run') throw new Error(`${id} is no pour.`);
  return { ...evaluation.plan, computation: { ...evaluation.plan.computation, meshCells: 70 } };
}

function windowStudy() {
  const chosen = chooseStudy(read('class-window'), null);
  if (!('plan' in chosen)) throw new Error('The book has no one study.');
  return chosen;
}

function pointOfWindow(point: number): PourPlan {
  const { plan, head } = windowStudy();
  const at = planAt(plan, valuesAt(gridOf(head), point));
  if (!('plan' in at)) throw new Error(`Point ${point} is no pour.`);
  return at.plan;
}

function figuresOf(plan: PourPlan, endsWhenDecided: boolean): PointFigures {
  const run = runPour({ ...plan, computation: { ...plan.computation, endsWhenDecided } });
  let step = run.next();
  while (!step.done) step = run.next();
  const result = pointResult(step.value);
  if (!('figures' in result)) throw new Error('The pour stopped.');
  return result.figures;
}

/** What is told of a point of a map, as a curve would tell it of the same pour. */
const told = ({ lap, verdict, cause, ...figures }: PointFigures) => ({
  verdict,
  cause,
  cold: lap?.kind,
  margin: lap?.margin,
  firstFlow: figures.firstFlow,
  peakFrontSpeed: figures.peakFrontSpeed,
  shareAboveCritical: figures.shareAboveCritical,
  arrivalTime: figures.arrivalTime,
  filledTime: figures.filledTime,
  fillTime: figures.fillTime,
});

/** The last places of the die of the high sill fill a second after 99.5 % of it, and had the least left before freezing. */
const FILLED: readonly (readonly [string, () => PourPlan])[] = [
  ['the high sill', () => pourOf('class-sill', 'high')],
  ['the flush sill', () => pourOf('class-sill', 'flush')],
  ['a damper that is nearly shut', () => pourOf('setting-the-damper', 'pour-shut')],
  ...[33, 43, 63, 75, 91].map((point) => [`point ${point} of a window`, () => pointOfWindow(point)] as const),
];

test.each(FILLED)('a map tells of %s what a curve tells of the same pour', (_, make) => {
  const plan = make();
  const [cut, whole] = [figuresOf(plan, true), figuresOf(plan, false)];
  expect([cut.cut, whole.cut]).toEqual(['full', null]);
  expect(told(cut)).toEqual(told(whole));
  expect(cut.lap!.margin).not.toBeNull();
});

test('of a pour that is left with its front stiff, nothing is told that only its end tells', () => {
  const cut = figuresOf(pourOf('class-window', 'slow'), true);
  expect([cut.cut, cut.lap]).toEqual(['stiff', { kind: 'misrun', margin: null }]);
  expect(endFigure(cut, 'finalShare')).toBeNull();
  expect(cutWords(cut)).toContain('how full the die ends');
  const whole = figuresOf(pourOf('class-window', 'slow'), false);
  expect([whole.cut, cutWords(whole)]).toEqual([null, '']);
  expect(endFigure(whole, 'finalShare')).toBe(whole.finalShare);
});

test('a file leaves empty what a cut pour does not tell, says how far it was poured, and gives six digits', () => {
  const { head } = windowStudy();
  const rows = studyCsv(head, new Map([[0, { figures: figuresOf(pointOfWindow(33), true) }]])).split('\n');
  const [names, first] = rows.map((line) => line.split(','));
  const cell = (name: string) => first![names!.indexOf(name)];
  expect([cell('poured_to'), cell('final_share'), cell('fold_score'), cell('folds')]).toEqual([
    'the full die',
    '',
    '',
    '',
  ]);
  expect(cell('lap_margin_s')).toMatch(/^\d+\.\d+$/);
  for (const text of first!) expect(text.replace(/\D|^0\.0*/g, '').length).toBeLessThanOrEqual(7);
});
