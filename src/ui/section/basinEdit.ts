import type { Issue } from '$src/core/issue';
import { millimetres as mm } from '$src/core/section/millimetres';
import type { Section } from '$src/core/section/section';
import { SIZES } from '$src/core/section/sizes';
import {
  basinDepth,
  basinLength,
  LEAST_OPENING,
  shortestToLadle,
  withBasinDepth,
  withBasinLength,
} from '$src/report/study/basin';
import { refused, type SizeEdit, sound, tidied, tooLong, wrongAlready } from './sizeEdit';

/** What stands between back wall and mouth keeps this distance from the back wall [m]. */
const LEAST_GAP = 0.001;

/**
 * The basin that long from back wall to mouth: the back wall moves, and everything from the basin's rims to the die
 * end keeps its shape. Where the outline is wrong, or something stands in the way, it stays; also where the opening left
 * would be too short to ladle into.
 */
export function basinLengthTo(section: Section, length: number): SizeEdit {
  const wrong = wrongAlready(section, 'basin.length');
  if (wrong) return wrong;
  const now = basinLength(section);
  const kept = `${mm(now)} mm is kept.`;
  if (length < 0)
    return refused(
      'basin.length',
      `A basin of ${mm(length)} mm would have its back wall ${mm(-length)} mm past the mouth; ${kept}`,
      'Type how far the back wall stands before the mouth, without a minus.',
    );
  const short = tooShort(section, length);
  if (short) return refused('basin.length', `${short.message}; ${kept}`, short.remedy);
  const end = section.floor.at(-1)!.x - section.floor[0]!.x;
  const most = SIZES.most - (end - now);
  if (length > most) return tooLong('basin.length', length, most, kept);
  return sound(tidied(withBasinLength(section, length)), 'basin.length', kept);
}

/** What would be in the way of a back wall so near to the mouth; the first thing it meets. */
function tooShort(section: Section, length: number): Pick<Issue, 'message' | 'remedy'> | null {
  const nearest = nearestToWall(section);
  const passed = basinLength(section) - nearest.from + LEAST_GAP;
  const ladled = shortestToLadle(section);
  const least = Math.max(passed, ladled?.length ?? 0);
  if (length >= least - 1e-9) return null;
  if (ladled && ladled.length >= passed) {
    const left = Math.max(0, ladled.opening.length - basinLength(section) + length);
    const rim = `R${ladled.opening.rim + 1}`;
    return {
      message: `At ${mm(length)} mm the roof would leave ${mm(left)} mm of the basin open, too little to ladle into`,
      remedy: `Type ${mm(least)} mm or more, which leaves ${mm(Math.min(LEAST_OPENING, ladled.opening.length))} mm open, or move the roof's rim ${rim} towards the mouth first.`,
    };
  }
  return {
    message: `At ${mm(length)} mm the back wall would pass ${nearest.name}`,
    remedy: `Type ${mm(least)} mm or more, or move ${nearest.name} towards the mouth first.`,
  };
}

/** The lowest floor of the basin that far under the die floor at the mouth; 0 is flush. */
export function basinDepthTo(section: Section, depth: number): SizeEdit {
  const wrong = wrongAlready(section, 'basin.depth');
  if (wrong) return wrong;
  return sound(withBasinDepth(section, depth), 'basin.depth', `${mm(basinDepth(section))} mm is kept.`);
}

/** The first thing past the back wall that has a place along the axis, and how far from the wall it is [m]. */
function nearestToWall({ floor, roof, regions, vents, mouth }: Section): { name: string; from: number } {
  const wall = floor[0]!.x;
  const corners = [
    ...floor.map(({ x }, i) => ({ name: `F${i + 1}`, x })),
    ...roof.map(({ x }, i) => ({ name: `R${i + 1}`, x })),
  ];
  const places = [
    ...corners.filter(({ x }) => x > wall + 1e-9),
    ...regions.map(({ name, end }) => ({ name: `the end of “${name}”`, x: end })),
    ...vents.map(({ place }, i) => ({ name: `vent ${i + 1}`, x: place })),
    { name: 'the mouth', x: mouth },
  ];
  const nearest = places.reduce((a, b) => (b.x < a.x - 1e-9 ? b : a));
  return { name: nearest.name, from: nearest.x - wall };
}
