import type { StartLevel } from '$src/core/level/startLevel';
import type { PourPlan } from '$src/core/pour/plan';
import type { Point } from '$src/core/section/section';
import { endOf } from '$src/core/tilt/endOf';
import { type PageUnits, toDegrees } from '$src/core/units';
import { type Measure, measuresOf } from '../drawing/dimensions';
import { lengthFigure } from '../drawing/lengthFigure';
import { metalAtRest, standOfPlan } from '../drawing/metalAtRest';
import { type Box, escaped, type Paper, paperFor, pathOf, type Spot, short } from '../drawing/paper';
import { sectionMarks } from '../drawing/sectionMarks';
import { type Steel, steelAround } from '../drawing/steel';
import { shownLength, withUnit } from '../measureText';
import { stopsShort } from '../startLevelWords';
import { angleText } from '../wording';
import { cardDial } from './cardDial';
import { startLevelOf } from './fillMark';

/** Where things stand in the sketch [px]. */
interface Layout {
  readonly name: 'wide' | 'narrow';
  readonly width: number;
  readonly height: number;
  /** For the body, with room for dimensions all round. */
  readonly room: Box;
  readonly dial: Spot;
  /** Middle and baselines of the words for start and end. */
  readonly turn: { readonly x: number; readonly start: number; readonly end: number };
  /** How far down the words of the mark may reach. */
  readonly foot: number;
}

/** On the printed page: the mark's words at the left and the dial at the right. */
const WIDE: Layout = {
  name: 'wide',
  width: 688,
  height: 184,
  room: { x: 146, y: 29, width: 392, height: 122 },
  dial: { x: 612, y: 72 },
  turn: { x: 612, start: 158, end: 175 },
  foot: 184,
};
/** On a phone, where the printed one would be too small to read: the dial stands below the body. */
const NARROW: Layout = {
  name: 'narrow',
  width: 358,
  height: 320,
  room: { x: 150, y: 29, width: 180, height: 130 },
  dial: { x: 96, y: 252 },
  turn: { x: 262, start: 250, end: 270 },
  foot: 190,
};
/** A measure lies this far off what it measures [px]. */
const OFF = 18;
/** From one line of words to the next [px]. */
const LINE = 14;

/** The die at its start angle with the metal in it, to scale and with measures; twice, for paper and for a phone. */
export const cardSketch = (plan: PourPlan, units: PageUnits, id: string): string =>
  [WIDE, NARROW].map((layout) => sketchIn(layout, plan, units, `${id}-${layout.name}`)).join('');

function sketchIn(layout: Layout, plan: PourPlan, units: PageUnits, id: string): string {
  const { section, tilt, volume } = plan;
  const { width, height, room, dial, turn } = layout;
  const steel = steelAround(section);
  const paper = paperFor(steel.corners, tilt.start, room);
  const { shape, levels } = metalAtRest(section, volume, tilt.start, standOfPlan(plan));
  const mark =
    levels[0] === undefined ? NO_MARK : levelMark(paper, plan, levels[0], steel, units, layout.foot);
  const marks = [
    sectionMarks(paper, steel, shape, { id, step: 6 }),
    mouthLine(paper, plan),
    ...measuresOf(section, steel)
      .filter(({ name }) => name !== 'opening')
      .map((measure) => dimension(paper, measure, units)),
    mark.svg,
    plumb(mark, layout.foot),
    cardDial(dial, tilt.start, endOf(tilt)),
    `<text x="${turn.x}" y="${turn.start}" class="middle big">start ${escaped(angleText(tilt.start))}</text>`,
    `<text x="${turn.x}" y="${turn.end}" class="middle">end ${escaped(angleText(endOf(tilt)))}</text>`,
  ];
  const words = `Die and basin to scale at ${angleText(tilt.start)}, with the metal before the tilt.`;
  return `<svg class="sketch ${layout.name}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(words)}">${marks.join('')}</svg>`;
}

/** Words and lines at the left of the sketch, and how far down the page they reach [px]. */
interface LeftMark {
  readonly svg: string;
  readonly top: number;
  readonly bottom: number;
}

const NO_MARK: LeftMark = { svg: '', top: 0, bottom: 0 };
const PLUMB_HEIGHT = 52;

/** At the top of the left side, or at its foot where the words of the mark stand there. */
function plumb({ top, bottom }: LeftMark, foot: number): string {
  const isFree = bottom < 20 || top > 22 + PLUMB_HEIGHT;
  const y = isFree ? 22 : foot - PLUMB_HEIGHT - 6;
  return `<path class="thin" d="M24 ${short(y)}v42"/><path class="solid" d="M24 ${short(y + 50)}l-4 -12h8Z"/><text x="33" y="${short(y + 50)}">plumb</text>`;
}

function mouthLine(paper: Paper, { section: { mouth, floor, roof } }: PourPlan): string {
  const ys = [...floor, ...roof].map(({ y }) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const reach = (high - low) * 0.12;
  const a = paper.place({ x: mouth, y: low - reach });
  const b = paper.place({ x: mouth, y: high + reach });
  return `<path class="plane" d="${pathOf([a, b])}"/><text x="${short(b.x)}" y="${short(b.y - 5)}" class="middle halo bold">mouth</text>`;
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

function dimension(paper: Paper, measure: Measure, units: PageUnits): string {
  const [a, b] = outside(measure, paper.scale).map(paper.place) as [Spot, Spot];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 3) return '';
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const text = `${lengthFigure(measure.value, units.length)} ${units.length}`;
  return [
    ...(measure.side === 'inside'
      ? []
      : [measure.from, measure.to].map((end, i) => pathLine(paper.place(end), i === 0 ? a : b))),
    `<path class="thin" d="${pathOf([a, b])}"/>`,
    length > 22 ? arrow(a, along, -1) + arrow(b, along, 1) : '',
    label(a, b, along, text, measure.side === 'left'),
  ].join('');
}

const pathLine = (from: Spot, to: Spot): string => `<path class="hair" d="${pathOf([from, to])}"/>`;

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

/** Along the line where it has room, else beside it; a short one at the back wall has it on its left. */
function label(a: Spot, b: Spot, along: Spot, text: string, isLeft: boolean): string {
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const wide = text.length * 6.2 + 6;
  if (Math.hypot(b.x - a.x, b.y - a.y) < wide + 12)
    return plate(middle.x + (wide / 2 + (isLeft ? 5 : 4)) * (isLeft ? -1 : 1), middle.y, 0, text, wide);
  const turn = toDegrees(Math.atan2(along.y, along.x));
  return plate(middle.x, middle.y, turn > 90 || turn <= -90 ? turn + 180 : turn, text, wide);
}

/** Words on a piece of paper of their own, so that no line runs through them. */
const plate = (x: number, y: number, turn: number, text: string, wide: number): string =>
  `<g transform="translate(${short(x)} ${short(y)}) rotate(${short(turn)})"><rect class="plate" x="${short(-wide / 2)}" y="-7" width="${short(wide)}" height="14"/><text y="4" class="middle">${escaped(text)}</text></g>`;

/** Level of the metal and of the lip as lines to the left of the basin, and what lies between them. */
function levelMark(
  paper: Paper,
  plan: PourPlan,
  level: number,
  steel: Steel,
  units: PageUnits,
  foot: number,
): LeftMark {
  const start = startLevelOf(plan);
  const fromLip = start.held;
  const left = Math.min(...steel.corners.map((corner) => paper.place(corner).x));
  const heightOf = (elevation: number) => pageHeight(paper, elevation);
  const y = heightOf(level);
  const [title, ...lines] = markWords(start, units);
  const end = Math.max(left + 30, 112);
  const lip =
    fromLip === null ? '' : `<path class="hair" d="M12 ${short(heightOf(level - fromLip))}H${short(end)}"/>`;
  const isUnder = fromLip !== null && fromLip > 0;
  const tall = LINE * (lines.length + 1);
  const isAbove = isUnder || y + tall > foot;
  const upper = Math.min(y, fromLip === null ? y : heightOf(level - fromLip));
  const first = isAbove ? upper - tall + LINE - 6 : y + 16;
  const said = [title, ...lines].map(
    (text, index) =>
      `<text x="12" y="${short(first + index * LINE)}" class="halo${index === 0 ? ' bold' : ''}">${escaped(text)}</text>`,
  );
  const surface = `<path class="plane" d="M12 ${short(y)}H${short(end + 14)}"/>`;
  return { svg: [lip, surface, ...said].join(''), top: first - LINE, bottom: first + LINE * said.length };
}

/** Below the lip a mark; above it the skin holds the metal, and its height says little of its weight. */
function markWords(level: StartLevel, units: PageUnits): readonly [string, ...string[]] {
  const fromLip = level.held;
  if (fromLip === null) return ['weigh it', 'covers the lip'];
  const short = stopsShort(level, units);
  if (short) return ['weigh it', 'no mark: it stops', ...short.split(/ (?=the)/)];
  if (fromLip > 0) return ['weigh it', 'no mark: it', 'stands over the lip'];
  return ['fill to the mark', withUnit(shownLength(-fromLip, units)), 'below the lip'];
}

/** Where a lab elevation [m] lies on the page [px]: heights are square to the page whatever the inclination. */
const pageHeight = ({ scale, place }: Paper, elevation: number): number =>
  place({ x: 0, y: 0 }).y - elevation * scale;
