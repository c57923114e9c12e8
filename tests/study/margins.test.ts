import { describe, expect, it } from 'vitest';
import { triedWords } from '$src/report/study/answer';
import { gridOf } from '$src/report/study/grid';
import { marginsOf } from '$src/report/study/margins';
import { openingsOf } from '$src/report/study/openings';
import type { PointResult, Region } from '$src/report/study/region';
import { samplePlan } from './samplePlan';

const axes = [
  { setting: 'tilt.time', from: 2, to: 18, points: 20 },
  { setting: 'tilt.start', from: 0, to: 0.8, points: 20 },
];
const step = 16 / 19;

describe('margins', () => {
  it('finds edges to an eighth of a step, and says what lies past them', async () => {
    const regionAt = async (values: Readonly<Record<string, number>>): Promise<Region> => {
      if (values['tilt.time']! < 5) return 'folds film';
      return values['tilt.time']! > 11.3 ? 'misrun' : 'sound';
    };
    const margins = await marginsOf({ axes, at: [9, 0.4], regionAt });
    const [faster, slower, flatter, steeper] = margins!;
    expect(faster).toMatchObject({ axis: 0, direction: -1, meets: 'folds film' });
    expect(faster!.distance! - 4).toBeLessThanOrEqual(0);
    expect(faster!.distance!).toBeGreaterThan(4 - step / 8);
    expect(slower).toMatchObject({ meets: 'misrun' });
    expect(slower!.distance!).toBeGreaterThan(2.3 - step / 8);
    expect(slower!.distance!).toBeLessThanOrEqual(2.3);
    expect(flatter).toMatchObject({ distance: null, meets: null, limit: 0 });
    expect(steeper).toMatchObject({ distance: null, meets: null, limit: 0.8 });
  });

  it('walks over the values of the study, so that a point of the map on the line ends the range', async () => {
    const island = 2 + 14 * step;
    const regionAt = async (values: Readonly<Record<string, number>>): Promise<Region> =>
      Math.abs(values['tilt.time']! - island) < 0.05 ? 'misrun' : 'sound';
    const [, slower] = (await marginsOf({ axes, at: [9, 0.4], regionAt }))!;
    expect(slower).toMatchObject({ meets: 'misrun' });
    expect(slower!.limit).toBeLessThan(island);
    expect(slower!.limit).toBeGreaterThan(island - step / 8 - 1e-9);
  });

  it('knows the limit of the machine from an edge, within the range and at its end', async () => {
    const regionAt = async (values: Readonly<Record<string, number>>): Promise<Region> =>
      values['tilt.start']! > 0.7 ? 'outside the machine' : 'sound';
    const isBeyondMachine = (values: Readonly<Record<string, number>>): boolean =>
      values['tilt.start']! > 0.7 || values['tilt.time']! < 2;
    const found = (await marginsOf({ axes, at: [9, 0.4], regionAt, isBeyondMachine }))!;
    const [faster, slower, flatter, steeper] = found;
    expect(steeper).toMatchObject({ meets: 'outside the machine', isMachines: true });
    expect(steeper!.limit).toBeCloseTo(0.7, 6);
    expect(faster).toMatchObject({ limit: 2, distance: null, isMachines: true });
    expect([slower, flatter].some((margin) => margin!.isMachines)).toBe(false);
  });

  it('ends when it is stopped', async () => {
    expect(await marginsOf({ axes, at: [9, 0.4], regionAt: async () => null })).toBeNull();
  });
});

const figures = {
  outcome: 'filled and quiet',
  verdict: 'folds film',
  shortage: null,
  cut: null,
  isFeederJudged: false,
  cause: 'tongue',
  folds: 1,
  lap: null,
  firstFlow: 0,
  shareAtStart: 0,
  peakFrontSpeed: 0.6,
  criticalSpeed: 0.5,
  shareAboveCritical: 0.1,
  arrivalTime: 1,
  filledTime: 2,
  fillTime: 1,
  finalShare: 1,
  spill: { volume: 0, isByLevel: false },
  skinFolded: 0,
  foldScore: 3,
} as const;

describe('changes that open a window', () => {
  const grid = gridOf({ axes });
  const results = new Map<number, PointResult>([
    [3, { figures }],
    [7, { figures: { ...figures, foldScore: 1 } }],
  ]);

  it('tries the points that came closest first, and names the change that helps', async () => {
    const asked: Readonly<Record<string, number>>[] = [];
    const tried = await openingsOf({
      plan: samplePlan(),
      grid,
      results,
      regionAt: async (values) => {
        asked.push(values);
        return 'basin.length' in values ? 'sound' : 'folds film';
      },
    });
    expect(asked[0]!['tilt.time']).toBeCloseTo(2 + 7 * step, 9);
    const helpful = tried!.filter(({ soundAt }) => soundAt !== null);
    expect(new Set(helpful.map(({ setting }) => setting))).toEqual(new Set(['basin.length']));
    expect(asked.length).toBeLessThanOrEqual(2 * 14);
  });

  it('does not call a change unsound where there was no pour to judge', async () => {
    const tried = await openingsOf({
      plan: samplePlan(),
      grid,
      results,
      regionAt: async (values) => ('basin.length' in values ? 'in the die while ladling' : 'laps'),
    });
    const wordsOf = (setting: string) => {
      const change = tried!.find((one) => one.setting === setting)!;
      return triedWords([], 'basin 90 mm', change);
    };
    expect(wordsOf('basin.length')).toBe('basin 90 mm: nothing to judge, in the die while ladling');
    expect(wordsOf('charge.mass')).toBe('basin 90 mm: nothing sound');
  });
});
