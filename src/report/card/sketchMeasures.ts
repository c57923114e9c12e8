import type { Point, Section } from '$src/core/section/section';
import { fromDegrees, type PageUnits, toDegrees } from '$src/core/units';
import { type Box, meet } from '../drawing/box';
import type { Measure } from '../drawing/dimensions';
import { lengthFigure } from '../drawing/lengthFigure';
import { escaped, type Paper, pathOf, type Spot, short } from '../drawing/paper';
import type { Steel } from '../drawing/steel';

/** A measure lies this far off what it measures [px]. */
const OFF = 18;
/** Half the height of a figure's plate, and a figure's room for one letter [px]. */
const HALF_PLATE = 7;
const CHARACTER = 6.2;
/** An arrow's room; a line shorter than twice that has none [px]. */
const ARROW = 11;

/** How far over the steel a figure may stand, row by row [px], and at which shares of its line, from the middle, beside it. */
const ROWS = [0, 14, 28] as const;
const SHARES = [0.2, -0.2, 0.4, -0.4] as const;

/** A measure's figure and where it may stand. */
interface Figure {
  readonly text: string;
  readonly wide: number;
}

interface Place {
  readonly middle: Spot;
  /** [°] */
  readonly turn: number;
  /** From the end of the line to the figure, where it stands away from it. */
  readonly leader: readonly [Spot, Spot] | null;
}

/** What the figures have to fit in with. */
export interface Surroundings {
  readonly section: Section;
  readonly steel: Steel;
  /** Where anything may be drawn, and what else is there [px]. */
  readonly frame: Box;
  readonly taken: readonly Box[];
}

/** Measures as drawn, and whether a line that leads to a figure runs through something that was taken. */
export interface DrawnMeasures {
  readonly svg: string;
  readonly strikesTaken: boolean;
}

/**
 * The measures of a section as drawn on the card. Figures keep off each other and off what is taken, those of gaps
 * within the die, and off the edges of the steel where there is such a place; those that have the least choice of place, gaps far in the die, are placed first.
 */
export function sketchMeasures(
  paper: Paper,
  measures: readonly Measure[],
  units: PageUnits,
  { section, steel, frame, taken }: Surroundings,
): DrawnMeasures {
  const placed: Box[] = [...taken];
  let strikesTaken = false;
  const top = Math.max(...steel.corners.map(({ y }) => y));
  const dieEnd = Math.max(...steel.corners.map((corner) => paper.place(corner).x));
  const edges = edgesOf(steel, paper);
  const inDie = { ...frame, right: Math.min(frame.right, dieEnd) };
  const svg = [...measures]
    .sort((one, other) => other.from.x - one.from.x)
    .map((measure) => {
      const [a, b] = outside(measure, paper.scale).map(paper.place) as [Spot, Spot];
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      if (length < 3) return '';
      const text = `${lengthFigure(measure.value, units.length)} ${units.length}`;
      const figure = { text, wide: text.length * CHARACTER + 6 };
      const over = (top - measure.to.y) * paper.scale + 3;
      const places = placesOf(measure, [a, b], figure, {
        clear: over + HALF_PLATE,
        clearAcross: over + reachAcross(figure, a, b),
        isBeforeMouth: measure.from.x < section.mouth,
      });
      const isRoomFor = (one: Place) =>
        isFree(one, figure, placed, measure.side === 'inside' && !one.leader ? inDie : frame);
      const free = places.filter(isRoomFor);
      const place = free.find((one) => !liesOn(boxOf(one, figure), edges)) ?? free[0] ?? places[0]!;
      placed.push(boxOf(place, figure));
      const { leader } = place;
      strikesTaken ||= leader !== null && taken.some((other) => crosses(leader, other));
      return dimension(paper, measure, [a, b], place, figure);
    })
    .join('');
  return { svg, strikesTaken };
}

const isFree = (place: Place, figure: Figure, placed: readonly Box[], frame: Box): boolean => {
  const box = boxOf(place, figure);
  const isInside =
    box.left >= frame.left && box.right <= frame.right && box.top >= frame.top && box.bottom <= frame.bottom;
  return isInside && placed.every((other) => !meet(box, other));
};

type Edge = readonly [Spot, Spot];

/** The edges of the steel as drawn: a figure on one of them hides what it measures. */
const edgesOf = ({ shell, floorBlock, roofBlocks }: Steel, paper: Paper): Edge[] =>
  [shell, floorBlock, ...roofBlocks].flatMap((corners) => {
    const spots = corners.map(paper.place);
    return spots.map((spot, index): Edge => [spot, spots[(index + 1) % spots.length]!]);
  });

const liesOn = (box: Box, edges: readonly Edge[]): boolean => edges.some((edge) => crosses(edge, box));

/** Whether any of a line lies in a box: what is left of it when it is cut at each side in turn. */
function crosses([a, b]: Edge, { left, right, top, bottom }: Box): boolean {
  const sides = [
    { step: b.x - a.x, low: left - a.x, high: right - a.x },
    { step: b.y - a.y, low: top - a.y, high: bottom - a.y },
  ];
  let [from, to] = [0, 1];
  for (const { step, low, high } of sides) {
    if (Math.abs(step) < 1e-9) {
      if (low > 0 || high < 0) return false;
      continue;
    }
    const [one, other] = [low / step, high / step];
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
  }
  return from < to;
}

/** Half of what a level plate takes along the line of its measure [px]: more the more that line leans. */
function reachAcross({ wide }: Figure, a: Spot, b: Spot): number {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return (Math.abs(b.x - a.x) * (wide / 2) + Math.abs(b.y - a.y) * HALF_PLATE) / length;
}

function boxOf({ middle, turn }: Place, { wide }: Figure): Box {
  const angle = fromDegrees(turn);
  const x = (Math.abs(Math.cos(angle)) * wide) / 2 + Math.abs(Math.sin(angle)) * HALF_PLATE;
  const y = (Math.abs(Math.sin(angle)) * wide) / 2 + Math.abs(Math.cos(angle)) * HALF_PLATE;
  return { left: middle.x - x, right: middle.x + x, top: middle.y - y, bottom: middle.y + y };
}

/** How far past the steel a figure over it stands, where the die lies level and where it leans [px]. */
interface Clearance {
  readonly clear: number;
  readonly clearAcross: number;
  readonly isBeforeMouth: boolean;
}

/**
 * Places for a figure, the best first: on its line where that is long enough, beside it, or past one of its ends. A gap
 * lower than its figure has it over the steel, `clear` of it [px], or it would hide the gap; one before the mouth has it
 * towards the basin, where nothing is drawn.
 */
function placesOf(
  { side }: Measure,
  [a, b]: readonly [Spot, Spot],
  { wide }: Figure,
  { clear, clearAcross, isBeforeMouth }: Clearance,
): Place[] {
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const turn = toDegrees(Math.atan2(along.y, along.x));
  const onLine = { middle, turn: turn > 90 || turn <= -90 ? turn + 180 : turn, leader: null };
  const beside = (way: 1 | -1, y = middle.y): Place => ({
    middle: { x: middle.x + (wide / 2 + 4) * way, y },
    turn: 0,
    leader: null,
  });
  const past = (end: Spot, way: 1 | -1, reach: number, aside: number): Place => {
    const foot = { x: end.x + along.x * reach * way, y: end.y + along.y * reach * way };
    return { middle: { x: foot.x + aside, y: foot.y }, turn: 0, leader: reach > ARROW ? [end, foot] : null };
  };
  const near = [past(b, 1, HALF_PLATE + 4, 0), past(a, -1, HALF_PLATE + 4, 0)];
  const isUpright = side === 'left' || side === 'inside';
  const over = [0, 1, -1].map((way) => past(b, 1, clear, (wide / 2 - 4) * way));
  const wellOver = ROWS.flatMap((row) =>
    [0, 1, -1].map((way) => past(b, 1, clearAcross + row, (wide / 2 + 2) * way)),
  );
  const lean = along.y === 0 ? 0 : HALF_PLATE * Math.abs(along.x / along.y);
  const nearBy = (way: 1 | -1, reach: number): Place => ({
    middle: {
      x: middle.x + along.x * reach + (wide / 2 + 4 + lean) * way,
      y: middle.y + along.y * reach,
    },
    turn: 0,
    leader: null,
  });
  const ways = isBeforeMouth ? ([-1, 1] as const) : ([1, -1] as const);
  const alongIt = ways.flatMap((way) => SHARES.map((share) => nearBy(way, share * length)));
  const sideways = isBeforeMouth ? [beside(-1), beside(1)] : [beside(1), beside(-1)];
  const onIt = length >= wide + 12 ? [onLine] : [];
  if (!isUpright) return [...onIt, beside(1)];
  return side === 'left'
    ? [...onIt, beside(-1), ...SHARES.map((share) => nearBy(-1, share * length)), ...near, beside(1)]
    : length < 2 * HALF_PLATE
      ? [...over, ...wellOver, ...sideways]
      : [...onIt, ...sideways, ...alongIt, ...over, ...wellOver];
}

/** Moves a measure off the body, square to the die. */
function outside({ from, to, side }: Measure, scale: number): readonly [Point, Point] {
  const away = OFF / scale;
  const shift = { below: [0, -away], above: [0, away], left: [-away, 0], inside: [0, 0] }[side] as [
    number,
    number,
  ];
  const moved = ({ x, y }: Point): Point => ({ x: x + shift[0], y: y + shift[1] });
  return [moved(from), moved(to)];
}

function dimension(
  paper: Paper,
  measure: Measure,
  [a, b]: readonly [Spot, Spot],
  { middle, turn, leader }: Place,
  { text, wide }: Figure,
): string {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  return [
    ...(measure.side === 'inside'
      ? []
      : [measure.from, measure.to].map((end, i) => hairline(paper.place(end), i === 0 ? a : b))),
    leader ? hairline(...leader) : '',
    `<path class="thin" d="${pathOf([a, b])}"/>`,
    length > 2 * ARROW ? arrow(a, along, -1) + arrow(b, along, 1) : '',
    plate(middle, turn, text, wide),
  ].join('');
}

const hairline = (from: Spot, to: Spot): string => `<path class="hair" d="${pathOf([from, to])}"/>`;

function arrow({ x, y }: Spot, along: Spot, way: 1 | -1): string {
  const back = { x: x - along.x * 8 * way, y: y - along.y * 8 * way };
  const side = { x: -along.y * 2.4, y: along.x * 2.4 };
  const spots = [
    { x, y },
    { x: back.x + side.x, y: back.y + side.y },
    { x: back.x - side.x, y: back.y - side.y },
  ];
  return `<path class="solid" d="${pathOf(spots, true)}"/>`;
}

/** Words on a piece of paper of their own, so that no line runs through them. */
const plate = ({ x, y }: Spot, turn: number, text: string, wide: number): string =>
  `<g transform="translate(${short(x)} ${short(y)}) rotate(${short(turn)})"><rect class="plate" x="${short(-wide / 2)}" y="${-HALF_PLATE}" width="${short(wide)}" height="${2 * HALF_PLATE}"/><text y="4" class="middle">${escaped(text)}</text></g>`;
