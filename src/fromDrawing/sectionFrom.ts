import type { Issue } from '$src/core/issue';
import { checkSection } from '$src/core/section/checkSection';
import { lineAt } from '$src/core/section/lineAt';
import { millimetres } from '$src/core/section/millimetres';
import type { Point, Section } from '$src/core/section/section';
import type { DrawnLine } from './drawing';
import { type Placing, wallOf } from './placing';
import { PARTS_OF_METRE } from './tolerance';

/** Which lines become what, and where basin and opening end along the axis [m from the back wall]. */
export interface Choice {
  readonly floor: DrawnLine;
  readonly roof: DrawnLine;
  readonly placing: Placing;
  readonly mouth: number;
  /** The basin is open above as far as this; 0 = closed, with an open back wall in its place. */
  readonly openTo: number;
}

/** A section from a drawing. It comes with the issues that remain, if any; without a section when there can be none. */
export interface FromDrawing {
  readonly section: Section | null;
  readonly issues: readonly Issue[];
  /** What stands over at the ends of the longer of the two lines, and was cut off [m]. */
  readonly cutOff: number;
  /** Most that floor and roof stray from what was drawn [m]. */
  readonly stray: number;
}

/** Ends of floor and roof may differ by this share of the length; what is over is cut off. */
const OVERHANG = 0.05;
const SAME = 1e-6;

/** The section that the chosen lines give. Widths, cavities and coats are those of the section it takes the place of, and its vents as far from the die end. */
export function sectionFrom({ floor, roof, placing, mouth, openTo }: Choice, before: Section): FromDrawing {
  const [low, high] = [wallOf(floor, 'floor', placing), wallOf(roof, 'roof', placing)];
  const wrong = [low, high].flatMap((wall) => ('issues' in wall ? wall.issues : []));
  if ('issues' in low || 'issues' in high) return none(wrong);
  const from = Math.max(low.points[0]!.x, high.points[0]!.x);
  const to = Math.min(low.points.at(-1)!.x, high.points.at(-1)!.x);
  const whole =
    Math.max(low.points.at(-1)!.x, high.points.at(-1)!.x) - Math.min(low.points[0]!.x, high.points[0]!.x);
  if (to - from < (1 - 2 * OVERHANG) * whole) return none([differ(low.points, high.points)]);
  const down = lineAt(low.points, mouth + from, 'right');
  const laid = (points: readonly Point[]): Point[] =>
    cut(points, from, to).map(({ x, y }) => ({ x: tidy(x - from), y: tidy(y - down) }));
  const section = assembled(laid(low.points), laid(high.points), mouth, openTo, before);
  const stray = Math.max(low.stray, high.stray);
  return { section, issues: checkSection(section), cutOff: tidy(whole - (to - from)), stray };
}

const none = (issues: readonly Issue[]): FromDrawing => ({ section: null, issues, cutOff: 0, stray: 0 });

const tidy = (value: number): number => Math.round(value * PARTS_OF_METRE) / PARTS_OF_METRE;

function differ(floor: readonly Point[], roof: readonly Point[]): Issue {
  const stretch = (points: readonly Point[]): string =>
    `${millimetres(points[0]!.x)} to ${millimetres(points.at(-1)!.x)} mm`;
  const message = `Floor and roof do not lie over each other: the floor goes from ${stretch(floor)}, the roof from ${stretch(roof)}.`;
  return {
    path: 'roof',
    message,
    remedy: 'Choose a floor and a roof that both go from the back wall to the die end.',
  };
}

/** The line between two places, cut where it crosses them. */
function cut(points: readonly Point[], from: number, to: number): Point[] {
  const inside = points.filter(({ x }) => x > from + SAME && x < to - SAME);
  const at = (x: number, side: 'left' | 'right'): Point => ({ x, y: lineAt(points, x, side) });
  return [at(from, 'right'), ...inside, at(to, 'left')];
}

function assembled(floor: Point[], roof: Point[], mouth: number, openTo: number, before: Section): Section {
  const end = floor.at(-1)!.x;
  const [first, last] = [before.regions[0], before.regions.at(-1)];
  const isOpenAbove = openTo > 0;
  const opened = isOpenAbove ? withCornerAt(roof, openTo) : roof;
  return {
    floor,
    roof: opened,
    openings: isOpenAbove ? [{ wall: 'roof', from: 0, to: rimOf(opened, openTo) }] : [{ wall: 'back wall' }],
    regions: [
      { ...first!, name: first?.name ?? 'basin', end: mouth },
      { ...last!, name: last === first ? 'die' : (last?.name ?? 'die'), end },
    ],
    mouth,
    cavities: before.cavities,
    pivot: { x: mouth, y: 0 },
    vents: before.vents.map((vent) => ({ ...vent, place: tidy(ventPlace(vent.place, before, mouth, end)) })),
  };
}

/** As far from the die end as it was, where gas is shut in last; within the die, where that is shorter. */
const ventPlace = (place: number, before: Section, mouth: number, end: number): number =>
  Math.min(end, Math.max(mouth, end - (before.floor.at(-1)!.x - place)));

/** The first point of the roof at the rim: before a step down, where there is one. */
const rimOf = (roof: readonly Point[], at: number): number =>
  roof.findIndex(({ x }) => Math.abs(x - at) <= 1e-5);

/** The line with a point at that place, on the line as it is. */
function withCornerAt(points: readonly Point[], x: number): Point[] {
  if (points.some((point) => Math.abs(point.x - x) <= 1e-5)) return [...points];
  const next = points.findIndex((point) => point.x > x);
  if (next < 1) return [...points];
  return [...points.slice(0, next), { x, y: lineAt(points, x, 'right') }, ...points.slice(next)];
}
