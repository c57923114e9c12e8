import { standOf } from '$src/core/level/stand';
import type { PourRecord } from '$src/core/pour/record';
import { levelFronts } from './levelFronts';
import type { Curve } from './series';
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
const originOf = ({ plan, series }: PourRecord): string => {
  const { section, volume, liquid } = plan;
  const { floor, roof, openings, regions, mouth, cavities } = section;
  const widths = regions.map(({ end, width, widthAtEnd }) => [end, width, widthAtEnd]);
  return JSON.stringify([
    [floor, roof, openings, widths, mouth, cavities],
    volume,
    standOf(liquid),
    series.inclination[0],
  ]);
};

const lastAngle = ({ series }: PourRecord): number => series.inclination.at(-1)!;

/**
 * The level fills of some pours: one for all that have the same metal in the same section from the same start, called after
 * its pours where there is another beside it. Of pours that end at different inclinations the one that is turned furthest
 * draws it.
 */
export function levelFills(pours: readonly Poured[]): LevelFill[] {
  const alike = groupsOf(pours);
  return alike.map((group) => {
    const furthest = group.reduce((a, b) => (lastAngle(b.record) < lastAngle(a.record) ? b : a));
    return {
      name: alike.length === 1 ? 'level fill' : `level fill, ${listText(group.map(({ name }) => name))}`,
      curve: levelFronts(furthest.record).withStand,
    };
  });
}

function groupsOf(pours: readonly Poured[]): Poured[][] {
  const groups = new Map<string, Poured[]>();
  for (const pour of pours) {
    const origin = originOf(pour.record);
    groups.set(origin, [...(groups.get(origin) ?? []), pour]);
  }
  return [...groups.values()];
}
