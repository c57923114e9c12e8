import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import type { PourRecord } from '$src/core/pour/record';
import { toDegrees } from '$src/core/units';
import { type Curve, dieLength, isAtEnd, levelFrontCurve, thin } from './series';

/** Front place [mm] by inclination [°] of the level fill of a pour: what a very slow tilt would do. */
export interface LevelFronts {
  readonly withStand: Curve;
  readonly withoutStand: Curve;
}

const POINTS = 240;
const known = new WeakMap<PourRecord, LevelFronts>();

/** The level fill of this pour with and without the capillary stand; worked out once for each record. */
export function levelFronts(record: PourRecord): LevelFronts {
  const before = known.get(record);
  if (before) return before;
  const { section, volume, liquid } = record.plan;
  const [start, end] = [record.series.inclination[0]!, record.series.inclination.at(-1)!];
  const length = dieLength(record);
  const isHome = (front: number): boolean => isAtEnd(front, length);
  const curve = (stand: Parameters<typeof levelPath>[4]): Curve =>
    thin(levelFrontCurve(levelPath(section, volume, start, end, stand, isHome), length), POINTS);
  const fronts = { withStand: curve(standOf(liquid)), withoutStand: curve(null) };
  known.set(record, fronts);
  return fronts;
}

/** Inclinations [°] worth showing of the front: from the start until it has arrived, dynamic and level, and a little more. */
export function frontWindow(record: PourRecord, curves: readonly Curve[]): [from: number, to: number] {
  const { inclination, front } = record.series;
  const start = toDegrees(inclination[0]!);
  const lastOf = (curve: Curve): number => curve.x.at(-1) ?? start;
  const arrived = front.findIndex((place) => isAtEnd(place, dieLength(record)));
  const own = toDegrees(inclination.at(arrived)!);
  const lowest = Math.min(own, ...curves.filter(({ y }) => (y.at(-1) ?? 0) > 0).map(lastOf));
  return [
    Math.ceil(start / 5) * 5,
    Math.max(toDegrees(inclination.at(-1)!), Math.floor((lowest - 2) / 5) * 5),
  ];
}
