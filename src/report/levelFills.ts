import { standOf } from '$src/core/level/stand';
import type { PourRecord } from '$src/core/pour/record';
import { toMillimetres } from '$src/core/units';
import { levelFronts } from './levelFronts';
import { type Curve, dieLength, valueAt } from './series';
import { listText } from './wording';

/** A level fill that one or several pours share, and what it is called beside the others. */
export interface LevelFill {
  readonly name: string;
  /** Front place [mm] by inclination [°], with the capillary stand. */
  readonly curve: Curve;
}

interface Poured {
  readonly name: string;
  readonly record: PourRecord;
}

/** All that a level fill hangs on, but how far the die is turned. */
const originOf = (record: PourRecord): string =>
  JSON.stringify([bodyOf(record), record.plan.volume, record.series.inclination[0]]);

/** Die and metal. */
function bodyOf({ plan: { section, liquid } }: PourRecord): string {
  const { floor, roof, openings, regions, mouth, cavities } = section;
  const widths = regions.map(({ end, width, widthAtEnd }) => [end, width, widthAtEnd]);
  return JSON.stringify([[floor, roof, openings, widths, mouth, cavities], standOf(liquid)]);
}

const lastAngle = ({ series }: PourRecord): number => series.inclination.at(-1)!;

/**
 * The level fills of some pours: one for all that have the same metal in the same section from the same start, called after
 * its pours where there is another beside it. Of pours that end at different inclinations the one that is turned furthest
 * draws it.
 */
export function levelFills(pours: readonly Poured[]): LevelFill[] {
  const alike = joined(groupsOf(pours));
  return alike.map((group) => {
    const furthest = furthestOf(group);
    return {
      name: alike.length === 1 ? 'level fill' : `level fill, ${listText(group.map(({ name }) => name))}`,
      curve: levelFronts(furthest.record).withStand,
    };
  });
}

const furthestOf = (group: readonly Poured[]): Poured =>
  group.reduce((a, b) => (lastAngle(b.record) < lastAngle(a.record) ? b : a));

/** Two lines nearer than this share of the die at every angle are one to the eye. */
const ONE_LINE = 0.005;

/** Groups whose level fills cannot be told apart on a chart are one. */
function joined(groups: readonly Poured[][]): Poured[][] {
  const all: { members: Poured[]; curve: Curve }[] = [];
  for (const members of groups) {
    const { record } = furthestOf(members);
    const curve = levelFronts(record).withStand;
    const like = all.find(
      (one) =>
        bodyOf(one.members[0]!.record) === bodyOf(record) &&
        isOneLine(one.curve, curve, ONE_LINE * toMillimetres(dieLength(record))),
    );
    if (like) like.members.push(...members);
    else all.push({ members: [...members], curve });
  }
  return all.map(({ members }) => members);
}

function isOneLine(one: Curve, other: Curve, apart: number): boolean {
  const away = (a: Curve, b: Curve) =>
    a.x.every((x, index) => {
      const beside = valueAt(b, x);
      return (
        !Number.isFinite(beside) || !Number.isFinite(a.y[index]!) || Math.abs(beside - a.y[index]!) <= apart
      );
    });
  const starts = Math.abs((one.x[0] ?? 0) - (other.x[0] ?? 0)) < 1e-9;
  return starts && away(one, other) && away(other, one);
}

function groupsOf(pours: readonly Poured[]): Poured[][] {
  const groups = new Map<string, Poured[]>();
  for (const pour of pours) {
    const origin = originOf(pour.record);
    groups.set(origin, [...(groups.get(origin) ?? []), pour]);
  }
  return [...groups.values()];
}
