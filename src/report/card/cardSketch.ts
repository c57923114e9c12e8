import type { StartLevel } from '$src/core/level/startLevel';
import type { PourPlan } from '$src/core/pour/plan';
import { endOf } from '$src/core/tilt/endOf';
import type { PageUnits } from '$src/core/units';
import type { Box } from '../drawing/box';
import { measuresOf } from '../drawing/dimensions';
import { metalAtRest, standOfPlan } from '../drawing/metalAtRest';
import { escaped, type Paper, paperFor, pathOf, type Spot, short } from '../drawing/paper';
import { sectionMarks } from '../drawing/sectionMarks';
import { type Steel, steelAround } from '../drawing/steel';
import { isLadledIn } from '../ladledIn';
import { isAtBrink, stopsShort } from '../startLevelWords';
import { angleText } from '../wording';
import { cardDial } from './cardDial';
import { markDepth, startLevelOf } from './fillMark';
import { sketchMeasures } from './sketchMeasures';

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
  room: { left: 146, top: 34, right: 538, bottom: 151 },
  dial: { x: 612, y: 72 },
  turn: { x: 612, start: 158, end: 175 },
  foot: 184,
};
/** On a phone, where the printed one would be too small to read: the dial stands below the body. */
const NARROW: Layout = {
  name: 'narrow',
  width: 358,
  height: 320,
  room: { left: 150, top: 34, right: 330, bottom: 159 },
  dial: { x: 96, y: 252 },
  turn: { x: 262, start: 250, end: 270 },
  foot: 190,
};
/** From one line of words to the next [px]. */
const LINE = 14;
/** Room for one letter, and for one of the bold title [px]. */
const LETTER = 5.9;
const BOLD_LETTER = 6.6;

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
  const measures = measuresOf(section, steel).filter(({ name }) => name !== 'opening');
  const measuredWith = (mouth: MouthLine) => ({
    mouth,
    drawn: sketchMeasures(paper, measures, units, {
      section,
      steel,
      frame: { left: 4, top: 4, right: width - 4, bottom: height - 4 },
      taken: [mouth.box, ...mark.boxes],
    }),
  });
  const plain = measuredWith(mouthLine(paper, plan, 'over'));
  // The word makes way for a line that leads to a figure and would run through it.
  const { mouth, drawn } = plain.drawn.strikesTaken ? measuredWith(mouthLine(paper, plan, 'aside')) : plain;
  const marks = [
    sectionMarks(paper, steel, shape, { id, step: 6 }),
    mark.lines,
    mouth.svg,
    drawn.svg,
    mark.words,
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
  /** Drawn first, so that figures lie over them. */
  readonly lines: string;
  readonly words: string;
  readonly top: number;
  readonly bottom: number;
  /** What its words and lines take. */
  readonly boxes: readonly Box[];
}

const NO_MARK: LeftMark = { lines: '', words: '', top: 0, bottom: 0, boxes: [] };
const PLUMB_HEIGHT = 52;

/** At the top of the left side, or at its foot where the words of the mark stand there. */
function plumb({ top, bottom }: LeftMark, foot: number): string {
  const isFree = bottom < 20 || top > 22 + PLUMB_HEIGHT;
  const y = isFree ? 22 : foot - PLUMB_HEIGHT - 6;
  return `<path class="thin" d="M24 ${short(y)}v42"/><path class="solid" d="M24 ${short(y + 50)}l-4 -12h8Z"/><text x="33" y="${short(y + 50)}">plumb</text>`;
}

interface MouthLine {
  readonly svg: string;
  readonly box: Box;
}

/** The line across the mouth, its word over its end or from there towards the die. */
function mouthLine(
  paper: Paper,
  { section: { mouth, floor, roof } }: PourPlan,
  word: 'over' | 'aside',
): MouthLine {
  const ys = [...floor, ...roof].map(({ y }) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const reach = (high - low) * 0.12;
  const a = paper.place({ x: mouth, y: low - reach });
  const b = paper.place({ x: mouth, y: high + reach });
  const x = word === 'over' ? b.x : b.x + 18;
  const svg = `<path class="plane" d="${pathOf([a, b])}"/><text x="${short(x)}" y="${short(b.y - 5)}" class="middle halo bold">mouth</text>`;
  return { svg, box: { left: x - 22, right: x + 22, top: b.y - 17, bottom: b.y - 3 } };
}

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
  const lipY = fromLip === null ? null : heightOf(level - fromLip);
  const lip = lipY === null ? '' : `<path class="hair" d="M12 ${short(lipY)}H${short(end)}"/>`;
  const isUnder = fromLip !== null && fromLip > 0;
  const tall = LINE * (lines.length + 1);
  const isAbove = isUnder || y + tall > foot;
  const first = isAbove ? Math.min(y, lipY ?? y) - tall + LINE - 8 : Math.max(y, lipY ?? y) + 16;
  const said = [title, ...lines].map(
    (text, index) =>
      `<text x="12" y="${short(first + index * LINE)}" class="halo${index === 0 ? ' bold' : ''}">${escaped(text)}</text>`,
  );
  const surface = `<path class="plane" d="M12 ${short(y)}H${short(end + 14)}"/>`;
  const top = first - LINE;
  const longest = Math.max(title.length * BOLD_LETTER, ...lines.map((text) => text.length * LETTER));
  const boxes = [
    { left: 12, right: 12 + longest, top: top + 3, bottom: top + 3 + LINE * said.length },
    { left: 12, right: end + 14, top: y - 1, bottom: y + 1 },
    ...(lipY === null ? [] : [{ left: 12, right: end, top: lipY - 1, bottom: lipY + 1 }]),
  ];
  return { lines: lip + surface, words: said.join(''), top, bottom: first + LINE * said.length, boxes };
}

/** Below the lip a mark; above it the skin holds the metal, and its height says little of its weight. */
function markWords(level: StartLevel, units: PageUnits): readonly [string, ...string[]] {
  const fromLip = level.held;
  if (isLadledIn(level.inDie)) return ['weigh it', 'no mark: it', 'runs into the die'];
  if (fromLip === null) return ['weigh it', 'covers the lip'];
  const short = stopsShort(level, units);
  if (short) return ['weigh it', 'no mark: it stops', ...short.split(/ (?=the)/)];
  if (fromLip > 0) return ['weigh it', 'no mark: it', 'stands over the lip'];
  const mark = markDepth(fromLip, units);
  return [
    isAtBrink(fromLip) ? 'fill to the brink' : 'fill to the mark',
    ...(mark === null ? ['level with the lip'] : [mark, 'below the lip']),
  ];
}

/** Where a lab elevation [m] lies on the page [px]: heights are square to the page whatever the inclination. */
const pageHeight = ({ scale, place }: Paper, elevation: number): number =>
  place({ x: 0, y: 0 }).y - elevation * scale;
