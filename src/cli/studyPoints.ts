import { gridOf, valuesAt } from '$src/report/study/grid';
import { pointAt } from '$src/report/study/pointAt';
import { pointResult } from '$src/report/study/pointFigures';
import type { PointResult } from '$src/report/study/region';
import type { ChosenStudy } from './chooseStudy';
import { computeEach } from './computeEach';

/** One part of a study: part `number` of `of`, counted from 1. Points go round the parts in turn. */
export interface Shard {
  readonly number: number;
  readonly of: number;
}

export const WHOLE: Shard = { number: 1, of: 1 };

/** The points of one part, by number. */
export function pointsOf({ head }: Pick<ChosenStudy, 'head'>, { number, of }: Shard): number[] {
  const points = Array.from({ length: gridOf(head).count }, (_, point) => point);
  return points.filter((point) => point % of === number - 1);
}

/** Computes every point of one part, none interpolated. */
export async function studyPoints(study: ChosenStudy, shard: Shard): Promise<Map<number, PointResult>> {
  const grid = gridOf(study.head);
  const asked = pointsOf(study, shard).map((point) => ({
    point,
    at: pointAt(study.plan, valuesAt(grid, point)),
  }));
  const poured = asked.flatMap(({ point, at }) => ('plan' in at ? [{ point, plan: at.plan }] : []));
  const results = await computeEach<PointResult>(
    poured.map(({ plan }) => plan),
    { record: pointResult, refused: (failed) => ({ failed }) },
  );
  const computed = new Map(poured.map(({ point }, index) => [point, results[index]!]));
  return new Map(asked.map(({ point, at }) => [point, 'refused' in at ? at : computed.get(point)!]));
}
