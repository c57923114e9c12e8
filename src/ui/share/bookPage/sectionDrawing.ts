import type { Section } from '$src/core/section/section';
import type { PageUnits } from '$src/core/units';
import { sketchMeasures } from '$src/report/card/sketchMeasures';
import type { Box } from '$src/report/drawing/box';
import { measuresOf } from '$src/report/drawing/dimensions';
import type { MetalShape } from '$src/report/drawing/metalShape';
import { escaped, fittingScale, type Paper, paperFor, pathOf, short } from '$src/report/drawing/paper';
import { sectionMarks } from '$src/report/drawing/sectionMarks';
import { steelAround } from '$src/report/drawing/steel';
import { type PlacedLabel, placeLabels } from '../../drawing/labels';
import { namedParts } from '../../drawing/names';

/** A drawing for one width of page [px]: room round the body for measures and names. */
interface Layout {
  readonly name: 'wide' | 'narrow';
  readonly width: number;
  readonly margins: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly mostTall: number;
  /** How many parts are named, the most needed first. */
  readonly names: number;
}

const WIDE: Layout = {
  name: 'wide',
  width: 800,
  margins: { left: 96, right: 84, top: 84, bottom: 84 },
  mostTall: 300,
  names: 9,
};
const NARROW: Layout = {
  name: 'narrow',
  width: 358,
  margins: { left: 58, right: 20, top: 88, bottom: 72 },
  mostTall: 240,
  names: 2,
};

/** What a section is drawn with: its words for those who do not see it, and its metal at the start. */
export interface Drawn {
  readonly words: string;
  readonly metal: MetalShape;
  readonly units: PageUnits;
}

/** The section with its axis level, its metal, measures and names; twice, for a wide page and for a phone. `id` is free in the page. */
export const sectionDrawing = (section: Section, drawn: Drawn, id: string): string =>
  [WIDE, NARROW].map((layout) => drawnIn(layout, section, drawn, `${id}-${layout.name}`)).join('');

function drawnIn(layout: Layout, section: Section, { words, metal, units }: Drawn, id: string): string {
  const { width, margins, mostTall } = layout;
  const steel = steelAround(section);
  const across = { left: margins.left, right: width - margins.right };
  const scale = fittingScale(steel.corners, 0, { ...across, top: 0, bottom: mostTall });
  const heights = steel.corners.map(({ y }) => y);
  const tall = (Math.max(...heights) - Math.min(...heights)) * scale;
  const paper = paperFor(
    steel.corners,
    0,
    { ...across, top: margins.top, bottom: margins.top + tall },
    scale,
  );
  const size = { width, height: Math.ceil(margins.top + tall + margins.bottom) };
  const labels = namesIn(layout, section, paper, size);
  const frame = { left: 2, top: 2, right: width - 2, bottom: size.height - 2 };
  const taken = labels.map(({ box }) => box);
  return `<svg class="section ${layout.name}" viewBox="0 0 ${size.width} ${size.height}" role="img" aria-label="${escaped(words)}">${[
    sectionMarks(paper, steel, metal, { id, step: 7 }),
    ...labels.map(leader),
    sketchMeasures(paper, measuresOf(section, steel), units, { section, steel, frame, taken }).svg,
    ...labels.map(name),
  ].join('')}</svg>`;
}

/** A line of measures lies this far off the body with its figures [px]. */
const MEASURES = 34;

function namesIn(
  layout: Layout,
  section: Section,
  paper: Paper,
  size: { width: number; height: number },
): PlacedLabel[] {
  const steel = steelAround(section);
  const wishes = namedParts(section, steel)
    .slice(0, layout.names)
    .map(({ key, name, at, away }) => ({
      key,
      lines: [name],
      anchor: paper.place(at),
      towards: { x: away.x, y: -away.y },
    }));
  const spots = [steel.floorBlock, steel.shell, steel.cavity, ...steel.roofBlocks].map((body) =>
    body.map(paper.place),
  );
  const ys = steel.corners.map((corner) => paper.place(corner).y);
  const left = Math.min(...steel.corners.map((corner) => paper.place(corner).x));
  const [top, foot] = [Math.min(...ys), Math.max(...ys)];
  const strips: Box[] = [
    { left: 0, right: size.width, top: foot, bottom: foot + MEASURES },
    { left: left - MEASURES - 24, right: left, top, bottom: foot },
    ...measuresOf(section, steel)
      .filter(({ side }) => side === 'above')
      .map(({ from, to }) => ({
        left: paper.place(from).x,
        right: paper.place(to).x,
        top: top - MEASURES,
        bottom: top,
      })),
  ];
  return placeLabels(wishes, spots, strips, size);
}

const leader = ({ wish: { anchor }, leaderEnd }: PlacedLabel): string =>
  `<path class="hair" d="${pathOf([anchor, leaderEnd])}"/>`;

const name = ({ wish: { lines }, middle }: PlacedLabel): string =>
  `<text x="${short(middle.x)}" y="${short(middle.y + 4)}" class="middle halo">${lines.map(escaped).join(' ')}</text>`;
