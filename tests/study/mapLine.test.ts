import { describe, expect, test } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { answerSentence, firstLookOf } from '$src/report/study/answer';
import { gridOf } from '$src/report/study/grid';
import type { MapAnswer } from '$src/report/study/mapAnswer';
import { marginsWithin, pastEdge } from '$src/report/study/mapLine';
import type { Margin } from '$src/report/study/margins';
import type { Region } from '$src/report/study/region';
import { faultWords } from '$src/report/study/regionWords';
import { closeEdges } from '$src/report/study/shopHold';
import { closeWords, rangeWords, soundRanges } from '$src/report/study/soundRanges';
import type { NamedAxis } from '$src/report/study/studyFile';

/** Tilt time 2 s to 18 s in nine points, the setting at 12.2 s; start angle 0° to +20° in three, set at the machine's limit. */
const time: NamedAxis = {
  setting: 'tilt.time',
  name: 'tilt time',
  quantity: 'time',
  from: 2,
  to: 18,
  points: 9,
  setPoint: 12.2,
};
const start: NamedAxis = {
  setting: 'tilt.start',
  name: 'start angle',
  quantity: 'angle',
  from: 0,
  to: fromDegrees(20),
  points: 3,
  setPoint: fromDegrees(20),
};
const axes = [time, start];

const ROWS: Record<string, Region> = { f: 'folds film', n: 'near the limit', s: 'sound', m: 'misrun' };

/** Rows from the lowest start angle up, one letter a point. */
const mapOf = (...rows: string[]): MapAnswer => {
  const regions = rows
    .join('')
    .split('')
    .map((letter) => ROWS[letter]!);
  return {
    grid: gridOf({ axes }),
    regions,
    isComputed: regions.map(() => true),
    shortages: regions.map(() => null),
    mainFold: null,
  };
};

const found = (axis: number, direction: -1 | 1, limit: number, meets: Region | null): Margin => ({
  axis,
  direction,
  limit,
  distance: meets === null ? null : Math.abs(limit - axes[axis]!.setPoint!),
  meets,
});
/** As found by pours on the lines themselves, which passed between the points of the map. */
const margins: readonly Margin[] = [
  found(0, -1, 11.9, 'near the limit'),
  found(0, 1, 18, null),
  found(1, -1, fromDegrees(17.6), 'folds film'),
  { ...found(1, 1, fromDegrees(20), null), isMachines: true },
];

const feeders = { atSetting: null, sound: 1, short: 0 };
const said = (answer: MapAnswer, spreads: readonly number[] = [0, 0]): string =>
  answerSentence({
    axes,
    answer,
    setRegion: 'sound',
    margins: marginsWithin(margins, axes, answer),
    tried: null,
    isDone: true,
    spreads,
    firstLook: firstLookOf(answer),
    feeders,
  })
    .map(({ text }) => text)
    .join('');

const LOWER = ['sssssssss', 'sssssssss'];

describe('a told range', () => {
  test('ends before the first point of its row that is not sound', () => {
    const answer = mapOf(...LOWER, 'ffffnssms');
    expect(marginsWithin(margins, axes, answer)![1]).toMatchObject({
      limit: 14,
      distance: 14 - 12.2,
      meets: 'misrun',
    });
    expect(said(answer)).toContain('At start angle +20°, tilt time 11.9 s to 14 s is sound.');
  });

  test('tells a hole, with what lies between', () => {
    expect(said(mapOf(...LOWER, 'ffffnssms'))).toMatch(
      / At more tilt time there are sound points again, with points between that are not: 16 s misruns\.$/,
    );
    expect(said(mapOf(...LOWER, 'ffffnssmm'))).not.toContain('sound points again');
  });

  test('tells an edge where kinds alternate as not resolved', () => {
    const answer = mapOf(...LOWER, 'smsmsnsmm');
    expect(pastEdge(axes, answer, { axis: 0, direction: -1 })).toBe('alternates');
    expect(said(answer)).toMatch(
      / The edge at less tilt time is not resolved: points of different kinds alternate\.$/,
    );
  });

  test('before the margins are known is that of its own row, told without the holes', () => {
    const answer = mapOf(...LOWER, 'ffffnmsms');
    const parts = { axes, answer, setRegion: 'sound' as const, margins: null, tried: null, isDone: false };
    const text = answerSentence({ ...parts, spreads: [0, 0], firstLook: firstLookOf(answer), feeders })
      .map((words) => words.text)
      .join('');
    expect(text).toBe('So far: the setting is sound. At start angle +20°, tilt time 14 s is sound.');
  });

  test('is left as it was found where the row holds nothing against it', () => {
    expect(marginsWithin(margins, axes, mapOf(...LOWER, 'ffffnssss'))).toEqual(margins);
    expect(marginsWithin(null, axes, null)).toBeNull();
  });
});

describe('what lies past an edge', () => {
  test('names the map’s point too where that fails in another way', () => {
    const flatter = marginsWithin(margins, axes, mapOf('sssssssss', 'sssssmsss', 'ffffnssss'))![2]!;
    expect(flatter).toMatchObject({ meets: 'folds film', mapMeets: 'misrun' });
    expect(faultWords(flatter, flatter.meets!)).toBe('folds film or misruns');
    const alike = marginsWithin(margins, axes, mapOf('sssssssss', 'sssssfsss', 'ffffnssss'))![2]!;
    expect(faultWords(alike, alike.meets!)).toBe('folds film');
  });
});

describe('an edge nearer than a shop can hold', () => {
  test('is told in the headline and with its range; steps of common practice, no source', () => {
    const text = said(mapOf(...LOWER, 'ffffnssss'));
    expect(text).toMatch(/^The setting is sound, but only 0\.3 s from a limit\. /);
    expect(text).toContain('a shop holds tilt time to about 5 %, 0.6 s (common practice, no source)');
    const [times, angles] = soundRanges(axes, margins);
    expect(closeWords(times!.close!, 'time')).toBe('only 0.3 s from a limit');
    // 2.4° of room, and a shop holds 2°.
    expect(angles!.close).toBeNull();
  });

  test('is measured by the repeats where they are known', () => {
    expect(closeEdges(axes, margins, [0.2, 0])).toEqual([]);
    const [close] = closeEdges(axes, margins, [0.2, fromDegrees(3)]);
    expect(close).toMatchObject({ margin: { axis: 1, direction: -1 }, hold: { isOwn: true } });
  });

  test('no room at all is less than the least that is shown', () => {
    const none = [found(0, -1, 12.2, 'misrun'), ...margins.slice(1)];
    expect(closeWords(closeEdges(axes, none, [0, 0])[0]!, 'time')).toBe('less than 0.1 s from misrun');
  });
});

test('a range says what its ends are, and is rounded inwards', () => {
  const [times, angles] = soundRanges(axes, [
    found(0, -1, 11.87, 'misrun'),
    found(0, 1, 13.79, 'misrun'),
    ...margins.slice(2),
  ]);
  expect(rangeWords(times!)).toBe('11.9 s to 13.7 s');
  expect(rangeWords(angles!)).toBe("+17.6° to +20°, the machine's limit");
  const open = soundRanges(axes, [found(0, -1, 2, null), found(0, 1, 18, null), ...margins.slice(2)]);
  expect(rangeWords(open[0]!)).toBe('2 s to 18 s, as far as was looked');
  const alone = soundRanges(axes, [
    found(0, -1, 12.2, 'misrun'),
    found(0, 1, 12.2, 'laps'),
    ...margins.slice(2),
  ]);
  expect(rangeWords(alone[0]!)).toBe('12.2 s alone');
});
