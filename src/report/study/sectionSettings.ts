import type { PourPlan } from '$src/core/pour/plan';
import { pointName } from '$src/core/section/checkLine';
import { SAME_PLACE } from '$src/core/section/lineAt';
import type { Point, Region, Section } from '$src/core/section/section';
import { SIZES } from '$src/core/section/sizes';
import { basinDepth, basinLength, shortestToLadle, withBasinDepth, withBasinLength } from './basin';
import type { Setting } from './setting';

const withSection = (plan: PourPlan, section: Section): PourPlan => ({ ...plan, section });

const BASIN: readonly Setting[] = [
  {
    id: 'basin.length',
    name: 'basin length',
    quantity: 'length',
    group: 'section',
    least: SIZES.least,
    most: SIZES.most,
    read: ({ section }) => basinLength(section),
    apply: ({ section, ...plan }, value) =>
      value < (shortestToLadle(section)?.length ?? 0) - SAME_PLACE
        ? null
        : { ...plan, section: withBasinLength(section, value) },
  },
  {
    id: 'basin.depth',
    name: 'basin floor under the mouth',
    quantity: 'length',
    group: 'section',
    least: -SIZES.most,
    most: SIZES.most,
    read: ({ section }) => basinDepth(section),
    apply: (plan, value) => withSection(plan, withBasinDepth(plan.section, value)),
  },
];

type Line = 'floor' | 'roof';
type Coordinate = 'x' | 'y';

const moved = (line: readonly Point[], index: number, coordinate: Coordinate, to: number): Point[] =>
  line.map((point, at) => (at === index ? { ...point, [coordinate]: to } : point));

function pointSetting(line: Line, index: number, coordinate: Coordinate): Setting {
  const name = pointName(line, index);
  return {
    id: `section.${line}.${index}.${coordinate}`,
    name: `${coordinate} of ${name}`,
    quantity: 'level',
    group: 'section',
    least: -SIZES.most,
    most: SIZES.most,
    read: ({ section }) => section[line][index]?.[coordinate] ?? null,
    apply: (plan, value) => {
      const { section } = plan;
      return withSection(plan, { ...section, [line]: moved(section[line], index, coordinate, value) });
    },
  };
}

function widthSetting(index: number, field: 'width' | 'widthAtEnd', name: string): Setting {
  return {
    id: `section.regions.${index}.${field}`,
    name,
    quantity: 'length',
    group: 'section',
    least: SIZES.least,
    most: SIZES.most,
    read: ({ section }) => section.regions[index]?.[field] ?? null,
    apply: (plan, value) => {
      const { section } = plan;
      const regions = section.regions.map((region, at) =>
        at === index ? { ...region, [field]: value } : region,
      );
      return withSection(plan, { ...section, regions });
    },
  };
}

/** The width of a region; where it tapers, those where it begins and where it ends. */
function widthSettings({ name, widthAtEnd }: Region, index: number): Setting[] {
  const width = widthSetting(index, 'width', `width of ${name}`);
  if (widthAtEnd === undefined) return [width];
  return [width, widthSetting(index, 'widthAtEnd', `width of ${name} where it ends`)];
}

/** Basin, widths and every corner of that section. */
export function sectionSettings(section: Section): Setting[] {
  const corners = (['floor', 'roof'] as const).flatMap((line) =>
    section[line].flatMap((_, index) => [pointSetting(line, index, 'x'), pointSetting(line, index, 'y')]),
  );
  return [...BASIN, ...section.regions.flatMap(widthSettings), ...corners];
}
