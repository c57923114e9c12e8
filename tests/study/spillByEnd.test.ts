import { expect, test } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { thinWall } from '$src/core/section/shapes';
import { STARTING_SHAPES } from '$src/core/section/startingShapes';
import { fromDegrees, METRIC, toCubicCentimetres } from '$src/core/units';
import { gridOf } from '$src/report/study/grid';
import { mapAnswer } from '$src/report/study/mapAnswer';
import { pointResult } from '$src/report/study/pointFigures';
import { pointMark } from '$src/report/study/pointMark';
import { foldsFilm, isCold, regionOf } from '$src/report/study/region';
import { hatchesOf } from '$src/report/study/regionHatch';
import { regionWords, resultWords } from '$src/report/study/regionWords';
import { spillWords } from '$src/report/study/spillByEnd';
import { type StudyHead, studyCsv } from '$src/report/study/studyFile';
import { samplePlan } from './samplePlan';

/** A section with so much metal for its cavity, turned from +30° to −90° in six seconds; without heat. */
function recordOf(section: Section, share: number, endsWhenDecided: boolean): PourRecord {
  const base = samplePlan(60);
  const plan: PourPlan = {
    ...base,
    section,
    volume: share * cavityVolume(section),
    tilt: {
      kind: 'steady',
      start: fromDegrees(30),
      end: fromDegrees(-90),
      rate: fromDegrees(20),
      smoothing: 0.3,
      limits: base.tilt.limits,
    },
    computation: { ...base.computation, endsWhenDecided },
    heat: null,
  };
  const run = runPour(plan);
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}

test('a pour of a map that ends with the full die tells what it would spill by the end of its stroke', () => {
  const [cut, whole] = [recordOf(thinWall(), 2.4, true), recordOf(thinWall(), 2.4, false)];
  expect(toCubicCentimetres(cut.figures.spilled)).toBeLessThan(0.5);
  const [onMap, inFull] = [pointResult(cut), pointResult(whole)];
  if (!('figures' in onMap && 'figures' in inFull)) throw new Error('A pour stopped.');
  expect([onMap, inFull].map(regionOf)).toEqual(['spills metal', 'spills metal']);
  const [said, lost] = [onMap.figures.spill!, inFull.figures.spill!];
  expect([said.isByLevel, lost.isByLevel]).toEqual([true, false]);
  // The level fill keeps no more than a pour does, and this one loses most of what it says.
  expect(lost.volume).toBeLessThan(said.volume);
  expect(lost.volume).toBeGreaterThan(0.7 * said.volume);
  expect(spillWords(said)).toMatch(/^Spills \d+ cm³ over a rim as the body turns, by the level fill;/);
  expect(spillWords(lost)).toMatch(/^Spills \d+ cm³ over a rim\.$/);
  const axis = {
    setting: 'tilt.start',
    name: 'start',
    quantity: 'angle',
    from: 0,
    to: 1,
    points: 2,
  } as const;
  const head = {
    axes: [
      { ...axis, setPoint: null },
      { ...axis, setPoint: null },
    ],
  } as unknown as StudyHead;
  const results = new Map([[0, onMap]]);
  const [names, first, second] = studyCsv(head, results, METRIC)
    .split('\n')
    .map((line) => line.split(','));
  const column = names!.indexOf('spilled_cm3');
  expect(Number(first![column])).toBeCloseTo(toCubicCentimetres(said.volume), 9);
  expect(second![column]).toBe('');
  expect(mapAnswer(head.axes, results)!.regions).toHaveLength(gridOf(head).count);
  expect(mapAnswer(head.axes, results)!.regions[0]).toBe('spills metal');
});

test('a charge that the feeder holds spills nothing, on a map as in full', () => {
  const feeding = STARTING_SHAPES.find(({ name }) => name === 'thin wall')!;
  for (const endsWhenDecided of [true, false]) {
    const result = pointResult(recordOf(feeding.make(), 1.6, endsWhenDecided));
    if (!('figures' in result)) throw new Error('The pour stopped.');
    expect(regionOf(result)).not.toBe('spills metal');
    expect(spillWords(result.figures.spill)).toBe('');
  }
});

test('a point that laps or is near a limit says first what it spills', () => {
  const result = pointResult(recordOf(thinWall(), 2.4, true));
  if (!('figures' in result)) throw new Error('The pour stopped.');
  expect(resultWords(result)).toBe('spills metal');
  const lapping = { ...result.figures, verdict: 'laps' as const, lap: { kind: 'laps' as const, margin: -1 } };
  expect(resultWords({ figures: lapping })).toBe('spills metal, and laps');
});

test('a point that folds and spills is in a region named after both, hatched and marked as folding, hazard first in its words', () => {
  const result = pointResult(recordOf(thinWall(), 2.4, true));
  if (!('figures' in result)) throw new Error('The pour stopped.');
  const folding = { figures: { ...result.figures, verdict: 'folds film' as const } };
  const lapping = { figures: { ...folding.figures, lap: { kind: 'laps' as const, margin: -1 } } };
  const dry = { figures: { ...folding.figures, spill: null } };
  const regions = [folding, lapping, dry].map(regionOf);
  expect(regions.map(regionWords)).toEqual([
    'folds film, spills metal',
    'folds film, laps, spills metal',
    'folds film',
  ]);
  expect(regions.map(foldsFilm)).toEqual([true, true, true]);
  expect(regions.map(isCold)).toEqual([false, true, false]);
  expect(hatchesOf(regions[0]!)).toEqual(['folds', 'spills']);
  expect(hatchesOf(regions[1]!)).toEqual(['folds', 'laps', 'spills']);
  expect([folding, lapping].map(resultWords)).toEqual([
    'spills metal, and folds film',
    'spills metal, and folds film and laps',
  ]);
  expect([folding, lapping].map(pointMark)).toEqual(['folds film', 'folds film and laps']);
});
