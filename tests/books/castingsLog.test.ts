import { expect, it } from 'vitest';
import type { CastingsCell } from '$src/cells/kinds';
import { runOtherwise } from '$src/report/castings/asRun';
import { type PredictedPour, scrapGroups } from '$src/report/castings/scrap';
import { scrapSentence } from '$src/report/castings/scrapSentence';
import { plainText } from '$src/report/sentence';
import { computed } from './computed';
import { planOf } from './planOf';
import { castingsLog } from './sources/castingsLog';

/** What the notes of the castings log claim of its invented castings and computed pours. */

const log = castingsLog.cells.find((cell): cell is CastingsCell => cell.kind === 'castings')!;

function predict(id: string): PredictedPour {
  const { figures, plan } = computed(planOf(castingsLog, id));
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
  const strays = log.castings.map((row) => runOtherwise(row, planOf(castingsLog, row.pour!)));
  expect(strays.map((words) => words !== '')).toEqual([false, true, false, true, false]);
});
