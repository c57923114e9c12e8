import { expect, test } from 'vitest';
import { answerSentence, firstLookOf } from '$src/report/study/answer';
import { type Feeders, feedersOf } from '$src/report/study/feeders';
import { gridOf } from '$src/report/study/grid';
import type { MapAnswer } from '$src/report/study/mapAnswer';
import type { Margin } from '$src/report/study/margins';
import { pointFigures } from '$src/report/study/pointFigures';
import type { PointResult, Region } from '$src/report/study/region';
import { resultWords } from '$src/report/study/regionWords';
import { closeEdges } from '$src/report/study/shopHold';
import type { NamedAxis } from '$src/report/study/studyFile';
import { inventedRecord } from '../report/inventedRecord';

const axes: readonly NamedAxis[] = [
  { setting: 'tilt.time', name: 'tilt time', quantity: 'time', from: 1, to: 4, points: 4, setPoint: 2 },
  { setting: 'charge.mass', name: 'mass', quantity: 'count', from: 0, to: 1, points: 2, setPoint: 0 },
];

function said(
  regions: readonly Region[],
  setRegion: Region | null = null,
  computed = regions.length,
  margins: readonly Margin[] | null = null,
  spreads: readonly number[] = [0, 0],
  isDone = true,
  feeders: Feeders = { atSetting: null, sound: 4, short: 0 },
): string {
  const answer: MapAnswer = {
    grid: gridOf({ axes }),
    regions,
    isComputed: regions.map((_, point) => point < computed),
    shortages: regions.map(() => null),
    mainFold: null,
  };
  const parts = {
    axes,
    answer,
    setRegion,
    margins,
    tried: [],
    isDone,
    spreads,
    firstLook: firstLookOf(answer),
    feeders,
  };
  return answerSentence(parts)
    .map(({ text }) => text)
    .join('');
}

const four = (...row: Region[]): Region[] => [...row, ...row];

test('a map says where it is sound, along the row of the set point', () => {
  const row: Region[] = ['folds film', 'sound', 'sound', 'laps'];
  expect(said(four(...row), 'sound')).toBe('The setting is sound. At mass 0, tilt time 2 s to 3 s is sound.');
  expect(said(four(...row))).toMatch(/^There is a window\./);
});

/** Margins of a set point at 2 s that is sound so far either way and laps then. */
const marginsOf = (distance: number): Margin[] =>
  ([-1, 1] as const).map((direction) => ({
    axis: 0,
    direction,
    limit: 2 + direction * distance,
    distance,
    meets: 'laps',
  }));

test('once its margins are found, the range round the set point is theirs and holds it, whatever the nearest row says', () => {
  const margins = marginsOf(0.75);
  const row = four('folds film', 'laps', 'sound', 'laps');
  expect(said(row, 'sound', row.length, margins)).toBe(
    'The setting is sound. At mass 0, tilt time 1.3 s to 2.7 s is sound.',
  );
});

test('a range that ends where the looking ends says so within its sentence', () => {
  const less: Margin = { axis: 0, direction: -1, limit: 1.5, distance: 0.5, meets: 'laps' };
  const open: Margin = { axis: 0, direction: 1, limit: 4, distance: null, meets: null };
  const row = four('laps', 'sound', 'sound', 'sound');
  expect(said(row, 'sound', row.length, [less, open])).toContain(
    'tilt time 1.5 s to 4 s, as far as was looked, is sound.',
  );
  expect(said(row, 'sound', row.length, [less, { ...open, isMachines: true }])).toContain(
    "tilt time 1.5 s to 4 s, the machine's limit, is sound.",
  );
});

test('a sound setting whose repeats stray past a margin is not called sound without that said', () => {
  const less: Margin = { axis: 0, direction: -1, limit: 1.5, distance: 0.5, meets: 'laps' };
  const more: Margin = { axis: 0, direction: 1, limit: 3.5, distance: 1.5, meets: 'near the limit' };
  const row = four('laps', 'sound', 'sound', 'sound');
  const at = (spread: number): string => said(row, 'sound', row.length, [less, more], [spread, 0]);
  expect(at(0.4)).toMatch(/^The setting is sound\. At/);
  expect(at(0.6)).toBe(
    'The setting is sound, its repeats are not. They stray by 0.6 s of tilt time, and 0.5 s less it laps. At mass 0, tilt time 1.5 s to 3.5 s is sound.',
  );
  expect(closeEdges(axes, [less, more], [2, 0]).map(({ margin }) => margin)).toEqual([less, more]);
});

test('where nothing is sound, what is near a limit is told as the nearest to it, and else that there is none', () => {
  expect(said(four('folds film', 'near the limit', 'near the limit', 'laps'))).toBe(
    'No clear window. Nothing in this range is sound beyond doubt. At mass 0, tilt time 2 s to 3 s is near a limit. None of the changes tried opens it; another kind of tilt was not tried.',
  );
  expect(said(four('folds film', 'folds film', 'laps', 'laps'))).toBe(
    'No window. Nothing is sound anywhere in this range. None of the changes tried opens it; another kind of tilt was not tried.',
  );
});

test('before the first look over the range is done it is said how far it is, and nothing of what it found', () => {
  const none = four(...Array<Region>(4).fill('outside the machine'));
  expect(said(none, null, 1)).toBe(
    'Being looked over. 1 of the first 8 pours are computed; what this range comes to is said after them.',
  );
  expect(said(none, null, 8)).toMatch(/^No pour here\./);
});

test('a map of many rows speaks at the row of the setting first, and of the widest elsewhere only where none is near', () => {
  const rows = 21;
  const tall: readonly NamedAxis[] = [
    { ...axes[0]!, setPoint: 4 },
    { setting: 'heat.die', name: 'die', quantity: 'count', from: 0, to: 20, points: rows, setPoint: 10 },
  ];
  const saidOf = (soundRows: ReadonlyMap<number, readonly Region[]>): string => {
    const none: readonly Region[] = ['misrun', 'misrun', 'misrun', 'misrun'];
    const regions = Array.from({ length: rows }, (_, row) => soundRows.get(row) ?? none).flat();
    const answer: MapAnswer = {
      grid: gridOf({ axes: tall }),
      regions,
      isComputed: regions.map(() => true),
      shortages: regions.map(() => null),
      mainFold: null,
    };
    const feeders = { atSetting: null, sound: 4, short: 0 };
    const [margins, tried, spreads] = [null, [], [0, 0]];
    const parts = {
      axes: tall,
      answer,
      setRegion: 'misrun' as const,
      margins,
      tried,
      isDone: true,
      spreads,
      feeders,
    };
    return answerSentence({ ...parts, firstLook: firstLookOf(answer) })
      .map(({ text }) => text)
      .join('');
  };
  const wide: readonly Region[] = ['sound', 'sound', 'sound', 'sound'];
  const narrow: readonly Region[] = ['misrun', 'sound', 'misrun', 'misrun'];
  expect(
    saidOf(
      new Map([
        [18, wide],
        [10, narrow],
      ]),
    ),
  ).toBe('The setting misruns. At die 10, tilt time 2 s is sound.');
  expect(
    saidOf(
      new Map([
        [18, wide],
        [12, narrow],
      ]),
    ),
  ).toBe('The setting misruns. At die 12, tilt time 2 s is sound.');
  expect(
    saidOf(
      new Map([
        [18, wide],
        [15, narrow],
      ]),
    ),
  ).toBe(
    'The setting misruns. Nothing is sound near die 10, as it is set. The widest range lies elsewhere: at die 18, tilt time 1 s to 4 s is sound.',
  );
});

test('what a study that still runs has found is told as so far; the setting itself is computed first and stands', () => {
  const row: Region[] = ['folds film', 'sound', 'sound', 'laps'];
  expect(said(four(...row), 'sound', 8, null, [0, 0], false)).toMatch(/^So far: the setting is sound\. At/);
  expect(said(four('laps', 'laps', 'laps', 'laps'), 'laps', 8, null, [0, 0], false)).toMatch(
    /^So far: no window\. Nothing is sound anywhere in this range\./,
  );
  expect(said(four(...row), 'sound', 3, null, [0, 0], false)).toMatch(/ The setting itself: sound\.$/);
});

test('nothing is called sound whose feeder is short without that said', () => {
  const short = 'the feeder is short of metal';
  const result = (shortage: string | null) =>
    ({ figures: { ...pointFigures(inventedRecord({ folds: [] })), shortage } }) satisfies PointResult;
  const results = new Map<number, PointResult>([
    [0, result(null)],
    [1, result(short)],
    [2, { failed: 'broke' }],
  ]);
  const feeders = feedersOf(results, result(short));
  expect(feeders).toEqual({ atSetting: short, sound: 2, short: 1 });
  const row: Region[] = ['folds film', 'sound', 'sound', 'laps'];
  const asked = (setRegion: Region | null, computed?: number) =>
    said(four(...row), setRegion, computed, null, [0, 0], true, feeders);
  const note =
    'At mass 0, tilt time 2 s to 3 s is sound. Sound is said of the filling here: at 1 of the 2 sound points computed the feeder cannot feed the casting; each point tells what it lacks.';
  expect(asked('sound')).toBe(`The setting fills quietly, but ${short}. ${note}`);
  expect(asked(null)).toBe(`There is a window. ${note}`);
  expect(asked('sound', 0)).toMatch(/The setting itself: fills quietly, but the feeder is short of metal\.$/);
  expect(resultWords(result(short))).toBe(`fills quietly, but ${short}`);
  expect(resultWords(result(null))).toBe('sound');
});

/** A study of one setting, all of it poured; `short` are the points whose feeder is short. */
function saidOfCurve(
  regions: readonly Region[],
  setRegion: Region | null,
  margins: readonly Margin[] | null = null,
  short: readonly number[] = [],
  setPoint = 2,
): string {
  const one = [{ ...axes[0]!, setPoint }];
  const answer: MapAnswer = {
    grid: gridOf({ axes: one }),
    regions,
    isComputed: regions.map(() => true),
    shortages: regions.map((_, point) => (short.includes(point) ? 'the feeder is short of metal' : null)),
    mainFold: null,
  };
  const sound = regions.filter((region) => region === 'sound').length;
  const feeders = { atSetting: null, sound, short: short.length };
  const firstLook = firstLookOf(answer);
  return answerSentence({
    axes: one,
    answer,
    setRegion,
    margins,
    tried: null,
    isDone: true,
    spreads: [0],
    firstLook,
    feeders,
  })
    .map(({ text }) => text)
    .join('');
}

test('a study of one setting has a verdict and a sound range in words, as a map has', () => {
  const row: Region[] = ['folds film', 'sound', 'sound', 'laps'];
  expect(saidOfCurve(row, 'sound')).toBe('The setting is sound. Tilt time 2 s to 3 s is sound.');
  expect(saidOfCurve(row, 'laps')).toBe('The setting laps. Tilt time 2 s to 3 s is sound.');
  expect(saidOfCurve(row, null)).toBe('There is a sound range. Tilt time 2 s to 3 s is sound.');
  // The setting may be sound between two points that are not, or lie outside the range.
  const none: Region[] = ['laps', 'laps', 'laps', 'laps'];
  const near = marginsOf(0.25);
  expect(saidOfCurve(none, 'sound', near)).toBe('The setting is sound. Tilt time 1.8 s to 2.2 s is sound.');
  expect(saidOfCurve(none, 'sound', null, [], 7)).toBe(
    'No sound range. Nothing is sound anywhere in this range. The setting itself: sound.',
  );
  expect(saidOfCurve(['laps', 'laps', 'laps', 'laps'], 'laps')).toBe(
    'No sound range. Nothing is sound anywhere in this range.',
  );
  const margins = marginsOf(0.75);
  expect(saidOfCurve(row, 'sound', margins)).toBe('The setting is sound. Tilt time 1.3 s to 2.7 s is sound.');
});

test('a study of one setting tells where its feeder is short, and where it is enough', () => {
  const row: Region[] = ['sound', 'sound', 'sound', 'laps'];
  expect(saidOfCurve(row, 'sound', null, [0])).toMatch(
    /at 1 of the 3 sound points computed the feeder cannot feed the casting.* Tilt time 2 s to 3 s fills quietly and has a feeder that is enough\.$/,
  );
  expect(saidOfCurve(row, 'sound', null, [0, 1, 2])).toMatch(/at all of the 3 sound points computed/);
  expect(saidOfCurve(row, 'sound', null, [0, 1, 2])).not.toContain('that is enough');
});
