import { describe, expect, test } from 'vitest';
import { fromDegrees, fromMillimetres, METRIC } from '$src/core/units';
import { edgeOfSensitivity, edgeOfStudy } from '$src/report/nearestEdge';
import { variationsOf } from '$src/report/sensitivity';
import type { Margin } from '$src/report/study/margins';
import type { PointFigures } from '$src/report/study/pointFigures';
import type { NamedAxis } from '$src/report/study/studyFile';
import { inventedPlan } from './inventedRecord';

const head: NamedAxis = {
  setting: 'charge.head',
  name: 'head in the feeder',
  quantity: 'length',
  from: fromMillimetres(20),
  to: fromMillimetres(60),
  points: 9,
  setPoint: fromMillimetres(40),
};
const start: NamedAxis = {
  setting: 'tilt.start',
  name: 'start angle',
  quantity: 'angle',
  from: 0,
  to: fromDegrees(40),
  points: 9,
  setPoint: fromDegrees(30),
};
const margins: readonly Margin[] = [
  { axis: 0, direction: -1, limit: fromMillimetres(20), distance: null, meets: null },
  { axis: 0, direction: 1, limit: fromMillimetres(45), distance: fromMillimetres(5), meets: 'folds film' },
  { axis: 1, direction: -1, limit: fromDegrees(28), distance: fromDegrees(2), meets: 'near the limit' },
  { axis: 1, direction: 1, limit: fromDegrees(38), distance: fromDegrees(8), meets: 'laps' },
];
const line = (found: readonly Margin[] | null, setRegion: 'sound' | 'near the limit' | null = 'sound') =>
  edgeOfStudy('Window', { axes: [head, start], margins: found, setRegion }, METRIC);

describe('the nearest edge by a study', () => {
  test('is told along each setting, the nearest first, with what lies beyond', () => {
    expect(line(margins)?.line).toBe(
      'start angle sound to +28°, 2.0° less, then near a limit; head in the feeder sound to 45 mm, 5.0 mm more, then folds film; by the study “Window”. Of the filling alone: feeders are not judged there.',
    );
  });

  test('no room is told as none', () => {
    const near = margins.map((margin) => (margin.axis === 1 ? { ...margin, distance: 0 } : margin));
    expect(line(near)?.line).toMatch(/^start angle with no room for less: then near a limit; /);
  });

  test('none is claimed where none was met, nor where nothing was looked at', () => {
    const open = margins.map((margin) => ({ ...margin, distance: null, meets: null }));
    expect(line(open)).toMatchObject({ name: 'no edge met' });
    expect(line(null)).toBeNull();
    expect(line(null, null)).toBeNull();
  });

  test('a pour that is not sound on the mesh of the study stands at an edge', () => {
    expect(line(null, 'near the limit')?.line).toMatch(/this very pour has another verdict: near a limit\.$/);
  });
});

const figures = (verdict: PointFigures['verdict'], shortage: string | null = null): PointFigures => ({
  outcome: 'filled and quiet',
  verdict,
  shortage,
  cut: null,
  isFeederJudged: false,
  cause: null,
  folds: 0,
  lap: null,
  firstFlow: 0.3,
  shareAtStart: 0,
  peakFrontSpeed: 0.3,
  criticalSpeed: 0.49,
  shareAboveCritical: 0,
  arrivalTime: 2,
  filledTime: 3,
  fillTime: 2,
  finalShare: 1,
  spill: { volume: 0, isByLevel: false },
  skinFolded: 0,
  foldScore: 0,
});

describe('the nearest edge by inputs a little off', () => {
  const variations = variationsOf(inventedPlan);
  const tried = (unsound: readonly string[], base: PointFigures['verdict'] = 'sound') =>
    edgeOfSensitivity({
      base: figures(base),
      variations,
      results: new Map(
        variations.map(({ id }) => [id, { figures: figures(unsound.includes(id) ? 'folds film' : 'sound') }]),
      ),
    });

  test('names the changes that are no longer sound, and says which value is only assumed', () => {
    expect(tried(['charge.mass1', 'contact90']).line).toMatch(
      /^No longer sound with charge \+5 % \(folds film\) and contact angle at 90° \(folds film; an assumed value\)\. Sound still with the other \w+ changes tried\.$/,
    );
  });

  test('counts those that were computed where all are sound', () => {
    expect(tried([])).toMatchObject({ name: 'no edge met' });
    const none = edgeOfSensitivity({
      base: figures('sound'),
      variations,
      results: new Map([
        ['charge.mass1', { figures: figures('sound') }],
        ['charge.mass-1', { reason: 'no' }],
      ]),
    });
    expect(none.line).toMatch(/one at a time: one change\.$/);
  });

  test('calls nothing sound whose feeder is short, as the verdict of a pour does', () => {
    const short = figures('sound', 'the feeder is short of metal');
    const sound = figures('sound');
    const asked = (base: PointFigures, less: PointFigures) =>
      edgeOfSensitivity({
        base,
        variations,
        results: new Map([
          ['charge.mass-1', { figures: less }],
          ['charge.mass1', { figures: sound }],
        ]),
      }).line;
    expect(asked(sound, short)).toBe(
      'No longer sound with charge −5 % (fills quietly, but the feeder is short of metal). Sound still with the other one change tried.',
    );
    // Where it is short to begin with, that stands in the pour's own verdict.
    expect(asked(short, short)).toBe(
      'Still sound with all that was tried below, one at a time: two changes. Of the filling alone: the feeder is short as it is.',
    );
  });

  test('claims nothing where the coarse mesh does not call the pour itself sound', () => {
    expect(tried([], 'near the limit').line).toMatch(/this very pour has another verdict: near a limit\.$/);
  });
});
