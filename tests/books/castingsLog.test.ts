import { expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { CastingsCell } from '$src/cells/kinds';
import { simulate } from '$src/core/pour/simulate';
import { runOtherwise } from '$src/report/castings/asRun';
import { type PredictedPour, scrapGroups } from '$src/report/castings/scrap';
import { scrapSentence } from '$src/report/castings/scrapSentence';
import { plainText } from '$src/report/sentence';
import { castingsLog } from './sources/castingsLog';

/** What the notes of the castings log claim of its invented castings and computed pours. */

const evaluations = evaluateBook(castingsLog);
const log = castingsLog.cells.find((cell): cell is CastingsCell => cell.kind === 'castings')!;

function planOf(id: string) {
  const evaluation = evaluations.get(id);
  if (evaluation?.state !== 'needs a run') throw new Error(`${id} is ${evaluation?.state}`);
  return evaluation.plan;
}

function predict(id: string): PredictedPour {
  const pour = simulate(planOf(id));
  let step = pour.next();
  while (!step.done) step = pour.next();
  const { figures, plan } = step.value;
  const margin = figures.lap?.margin ?? Number.POSITIVE_INFINITY;
  return {
    id,
    name: id,
    frontSpeed: figures.peakFrontSpeed! / plan.liquid.criticalSpeed,
    lapMargin: Number.isFinite(margin) ? margin : null,
  };
}

const predicted = ['old-way', 'new-way', 'new-quick'].map(predict);
const inPercent = (share: number): number => Math.round(share * 100);

it('folds go with the front speed, in the ranges the note tells, the quicker pour in the middle', () => {
  const groups = scrapGroups(log.castings, 'fold', 'front speed', predicted);
  expect(groups.map(({ pour }) => pour)).toEqual(['new-way', 'new-quick', 'old-way']);
  expect(groups.map(({ total }) => total)).toEqual([43, 15, 42]);
  expect(inPercent(groups[0]!.to)).toBe(12);
  expect([inPercent(groups[2]!.from), inPercent(groups[2]!.to)]).toEqual([15, 41]);
  expect(plainText(scrapSentence(groups, 'fold', 'front speed'))).toMatch(
    /^Scrap goes with the prediction\./,
  );
});

it('laps cannot be told apart', () => {
  const groups = scrapGroups(log.castings, 'lap', 'front speed', predicted);
  expect(plainText(scrapSentence(groups, 'lap', 'front speed'))).toMatch(
    /^Cannot be told apart\..*would tell them apart\.$/,
  );
});

it('two rows were run otherwise than their pour', () => {
  const strays = log.castings.map((row) => runOtherwise(row, planOf(row.pour!)));
  expect(strays.map((words) => words !== '')).toEqual([false, true, false, true, false]);
});
