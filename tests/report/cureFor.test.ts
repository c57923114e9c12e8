import { describe, expect, it } from 'vitest';
import { volumeFromFillLevel } from '$src/core/level/fillLevel';
import { firstFlowOf } from '$src/core/level/firstFlow';
import { levelPath } from '$src/core/level/levelPath';
import type { FoldKind } from '$src/core/pour/record';
import { PIT_BEHIND_SILL, pitBehindSill } from '$src/core/section/shapes';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { pourPart } from '$src/report/bookPage/pourPart';
import { isBrimful } from '$src/report/brimful';
import { cureFor } from '$src/report/cureFor';
import { standOfPlan } from '$src/report/drawing/metalAtRest';
import { numberedFolds } from '$src/report/numberedFolds';
import { pourJson } from '$src/report/pourFile';
import { inventedFold, inventedPlan, inventedRecord } from './inventedRecord';

const steady = (start: number, highestStart: number): Tilt => ({
  kind: 'steady',
  start: fromDegrees(start),
  end: fromDegrees(-90),
  rate: fromDegrees(15),
  smoothing: 0.2,
  limits: { ...WIDEST_LIMITS, highestStart: fromDegrees(highestStart) },
});

const USUAL = 'Start further uphill, at a higher start angle.';
const cureOf = (kind: FoldKind, tilt: Tilt, isFull = false): string =>
  cureFor({ kind, cure: USUAL }, tilt, isFull);

const TOLD_UPHILL: readonly FoldKind[] = [
  'front over critical',
  'tongue',
  'lip jet',
  'return wave',
  'end impact',
];

describe('the cure of a fold', () => {
  it.each(TOLD_UPHILL)('of %s is one that a machine can take which starts level at most', (kind) => {
    for (const highest of [-5, 0, 0.4]) {
      const cure = cureOf(kind, steady(Math.min(0, highest), highest));
      expect(cure).toMatch(/^The machine starts level at most: /);
      expect(cure).not.toMatch(/uphill|higher start|further/);
    }
  });

  it('asks for no fuller basin where the charge stands at the brink', () => {
    for (const kind of TOLD_UPHILL)
      for (const tilt of [steady(0, 0), steady(20, 20)])
        expect(cureOf(kind, tilt, true)).not.toMatch(/fill the basin|fuller basin|same weight/);
    expect(cureOf('tongue', steady(0, 0), true)).toMatch(/full to the brink/);
    expect(cureOf('tongue', steady(0, 30), true)).toBe(USUAL);
  });

  it('knows a brimful basin from one with room by where the charge stands at the start', () => {
    const { section, tilt } = inventedPlan;
    const at = (fromLip: number) =>
      isBrimful({ ...inventedPlan, volume: volumeFromFillLevel(section, tilt.start, fromLip)! });
    expect([at(-0.02), at(-0.001), at(0)]).toEqual([false, true, true]);
  });

  it('is right that from a level start a longer basin, as brimful, lets metal over the lip earlier', () => {
    const flowFrom = (basinLength: number): number => {
      const section = pitBehindSill({ ...PIT_BEHIND_SILL, basinLength });
      const volume = volumeFromFillLevel(section, 0, 0)!;
      const path = levelPath(section, volume, 0, fromDegrees(-90), standOfPlan(inventedPlan));
      const flow = firstFlowOf(path.inclination, path.front);
      if (flow.kind !== 'angle') throw new Error(`First flow is ${flow.kind}.`);
      return flow.inclination;
    };
    const [short, middle, long] = [0.12, 0.16, 0.21].map(flowFrom);
    expect(middle!).toBeGreaterThan(short! + fromDegrees(0.3));
    expect(long!).toBeGreaterThan(middle! + fromDegrees(0.3));
  });

  it('asks for no higher start of a pour that starts as high as its machine can', () => {
    expect(cureOf('tongue', steady(20, 20))).not.toMatch(/Start further/);
    expect(cureOf('front over critical', steady(20, 20))).toMatch(/as high as the machine can/);
  });

  it('is the usual one where the machine has room, and where it never asked for a start', () => {
    for (const kind of TOLD_UPHILL) expect(cureOf(kind, steady(0, 30))).toBe(USUAL);
    expect(cureOf('fronts meet', steady(0, 0))).toBe(USUAL);
  });

  it('believes a measured tilt that started higher than the limits typed beside it', () => {
    const tilt = { ...steady(20, 0), kind: 'measured', knots: [], origin: '' } as unknown as Tilt;
    expect(cureOf('lip jet', tilt)).toBe(USUAL);
  });

  it('is told alike in the list, in the file of a pour and in the page that plays', () => {
    const record = inventedRecord({
      plan: { ...inventedPlan, tilt: steady(0, 0) },
      folds: [{ ...inventedFold, kind: 'end impact', cure: USUAL }],
    });
    const { cure } = numberedFolds(record)[0]!;
    expect(cure).toMatch(/starts level at most/);
    expect(pourJson('level', record).folds[0]!.cure).toBe(cure);
    expect(pourPart(record, 'level')).toContain(cure);
  });
});
