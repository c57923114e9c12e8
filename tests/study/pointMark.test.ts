import { expect, test } from 'vitest';
import { feederCell, feederText } from '$src/report/study/feeders';
import { ownMeshWords } from '$src/report/study/ownMesh';
import { pointFigures } from '$src/report/study/pointFigures';
import { markMeanings, pointMark } from '$src/report/study/pointMark';
import type { PointResult } from '$src/report/study/region';
import { type StudyHead, studyCsv } from '$src/report/study/studyFile';
import { studyFileName } from '$src/report/study/studyFileName';
import { studySvg } from '$src/report/study/studySvg';
import { verdictShape } from '$src/report/verdictShape';
import { inventedRecord } from '../report/inventedRecord';

const quiet = {
  ...pointFigures(inventedRecord()),
  verdict: 'sound' as const,
  lap: null,
  cut: null,
  isFeederJudged: true,
};
const sound: PointResult = { figures: quiet };
const short: PointResult = { figures: { ...quiet, shortage: 'the feeder is short of metal' } };
const unjudged: PointResult = { figures: { ...quiet, isFeederJudged: false } };
const folding: PointResult = { figures: { ...quiet, verdict: 'folds film', isFeederJudged: false } };
const refused: PointResult = { refused: { by: 'machine', reason: 'Too steep.' } };

test('a point has the mark of its verdict, and that of sound only where its feeder is not short', () => {
  expect([sound, short, folding, refused].map(pointMark)).toEqual([
    'sound',
    'feeder short',
    'folds film',
    'not judged',
  ]);
  expect(markMeanings([folding, short, folding])).toEqual([
    { mark: 'feeder short', words: 'fills quietly, feeder short' },
    { mark: 'folds film', words: 'folds film' },
  ]);
  const shapes = [
    'sound',
    'feeder short',
    'near the limit',
    'folds film',
    'folds film and laps',
    'laps',
    'misrun',
    'not filled',
    'spills',
    'not judged',
  ] as const;
  expect(new Set(shapes.map((kind) => JSON.stringify(verdictShape(kind)))).size).toBe(shapes.length);
});

test('what the feeder does is told as enough, as what it lacks, or as not judged', () => {
  expect([sound, short, unjudged, refused].map(feederText)).toEqual([
    'enough',
    'the feeder is short of metal',
    'not judged',
    null,
  ]);
  expect([short, refused].map(feederCell)).toEqual(['short of metal', '–']);
});

const head: StudyHead = {
  book: 'Too slow is cold: a wall',
  casting: '',
  cell: 'Charge, alone',
  pour: '',
  solver: '',
  planHash: '',
  meshCells: 40,
  axes: [
    {
      setting: 'charge.mass',
      name: 'charge',
      quantity: 'mass',
      from: 0.5,
      to: 0.7,
      points: 3,
      setPoint: 0.6,
    },
  ],
};

test('the table of a study has a column for the feeder, and its files are named after book and study', () => {
  const results = new Map([sound, short, refused].entries());
  const [names, ...rows] = studyCsv(head, results)
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  const column = names!.indexOf('feeder');
  expect(rows.map((row) => row[column])).toEqual(['enough', 'the feeder is short of metal', '']);
  expect(studyFileName(head)).toBe('too-slow-is-cold-a-wall-charge-alone-curve');
  const long = studyFileName({ ...head, book: 'Long '.repeat(80), axes: [head.axes[0]!, head.axes[0]!] });
  expect(long).toMatch(/^[a-z-]{1,125}-map$/);
});

test('the picture of a map rings the points whose feeder is short, and its key says what a ring means', () => {
  const axes = [head.axes[0]!, { ...head.axes[0]!, setting: 'tilt.time', name: 'tilt time', points: 2 }];
  const map = (results: readonly PointResult[]) => studySvg({ ...head, axes }, new Map(results.entries()))!;
  const rings = (picture: string): number => [...picture.matchAll(/<path d="M0 0m/g)].length;
  const picture = map([sound, short, folding, short, short, sound]);
  // Three points, and the key.
  expect(rings(picture)).toBe(4);
  expect(picture).toContain('the feeder cannot feed the casting');
  expect(picture).toContain('sound, as far as the die fills');
  expect(rings(map([sound, sound, folding, sound, sound, sound]))).toBe(0);
});

test('where the mesh of the study calls the setting otherwise than its own, that is said', () => {
  expect(ownMeshWords(folding, sound, 400)).toBe(
    ' The pour as it is set folds film on the mesh of the study, whose verdict the mark bears, and is sound on its own mesh of 400 cells. The pour’s own counts; the study tells which way things go.',
  );
  expect(ownMeshWords(sound, sound, 400)).toBe('');
  expect(ownMeshWords(folding, null, 400)).toBe('');
});
