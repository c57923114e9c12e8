import { lineAt, SAME_PLACE, type Side } from '$src/core/section/lineAt';
import type { Point, Region, Section } from '$src/core/section/section';
import { LENGTH, type PageUnits, toMillimetres } from '$src/core/units';
import type { InputWords } from './inputWord';
import { shownLength, withUnit } from './measureText';
import { countText, fixed, listText } from './wording';

/** Lowest basin floor under the floor at the mouth [m]; 0 when flush. */
function pitDepth({ floor, mouth }: Section): number {
  const lip = lineAt(floor, mouth, 'right');
  const behind = floor.filter((point) => point.x < mouth).map((point) => point.y);
  return lip - Math.min(lip, ...behind);
}

function basinFloor(section: Section, units: PageUnits): string {
  const depth = pitDepth(section);
  return depth < 5e-5
    ? 'flush with the die floor'
    : `${withUnit(shownLength(depth, units))} under the die floor`;
}

/** A length without its unit: whole millimetres, hundredths of an inch. */
const roundLength = (length: number, units: PageUnits): string =>
  fixed(LENGTH[units.length].toShown(length), units.length === 'mm' ? 0 : 2);

const lengthsBy = (lengths: readonly number[], units: PageUnits): string =>
  `${lengths.map((length) => roundLength(length, units)).join(' × ')} ${units.length}`;

/** Greatest opening between floor and roof past the mouth [m]; both are straight between their points. */
function dieHeight({ floor, roof, mouth }: Section): number {
  const places = [mouth, ...[...floor, ...roof].map((point) => point.x).filter((x) => x > mouth)];
  const open = (x: number, side: Side): number => lineAt(roof, x, side) - lineAt(floor, x, side);
  return Math.max(
    0,
    ...places.flatMap((x) => (x > mouth ? [open(x, 'left'), open(x, 'right')] : [open(x, 'right')])),
  );
}

/** One width where the region has one, else those where it begins and where it ends [m]. */
const endWidths = ({ width, widthAtEnd = width }: Region): readonly number[] =>
  widthAtEnd === width ? [width] : [width, widthAtEnd];

function widthsText({ regions, mouth, cavities }: Section, units: PageUnits): string {
  return regions
    .map((region) => {
      const { name, end } = region;
      const shown = endWidths(region)
        .map((width) => roundLength(width, units))
        .join(' to ');
      return `${name} ${end > mouth + 1e-9 && cavities > 1 ? `${cavities} × ` : ''}${shown}`;
    })
    .join(', ')
    .concat(` ${units.length}`);
}

function ventsText({ vents, mouth }: Section, units: PageUnits): string {
  const open = vents.filter(({ blocked }) => blocked < 1);
  if (open.length === 0) return 'none open';
  const places = open.map(({ place }) => roundLength(place - mouth, units));
  return `${countText(open.length, 'vent')} at ${listText(places)} ${units.length} from the mouth`;
}

/** Places are compared from the mouth to a tenth of a micrometre, so that taking the mouth off leaves no dust. */
const exact = (length: number): number => Math.round(length * 1e7);

function pivotText({ pivot, mouth }: Section, units: PageUnits): string {
  const along = toMillimetres(pivot.x - mouth);
  const side = along >= 0.5 ? ' past the mouth' : along <= -0.5 ? ' behind the mouth' : ' at the mouth';
  const away = roundLength(Math.abs(pivot.x - mouth), units);
  return `${away} ${units.length}${side}, ${roundLength(pivot.y, units)} ${units.length} up`;
}

/** A line past the mouth, seen from the mouth: how the line gets there is the basin's affair. */
function linePast(line: readonly Point[], mouth: number): number[][] {
  const atMouth = { x: mouth, y: lineAt(line, mouth, 'right') };
  const beyond = line.filter(({ x }) => x > mouth + SAME_PLACE);
  return [atMouth, ...beyond].map(({ x, y }) => [exact(x - mouth), exact(y)]);
}

const lineBehind = (line: readonly Point[], mouth: number): number[][] =>
  line.filter(({ x }) => x < mouth - SAME_PLACE).map(({ x, y }) => [exact(x - mouth), exact(y)]);

/** Heights the basin floor passes through, from the lip; its lengths are another input. */
function basinHeights({ floor, mouth }: Section): number[] {
  const lip = lineAt(floor, mouth, 'right');
  const behind = floor.filter(({ x }) => x < mouth - SAME_PLACE).map(({ y }) => exact(y - lip));
  const heights = [...behind, exact(lineAt(floor, mouth, 'left') - lip)];
  return heights.filter((height, index) => height !== heights[index - 1]);
}

const openSpans = ({ roof, openings, mouth }: Section): unknown[] =>
  openings.map((opening) =>
    opening.wall === 'back wall'
      ? opening.wall
      : [opening.from, opening.to].map((index) => [exact(roof[index]!.x - mouth), exact(roof[index]!.y)]),
  );

/**
 * Where widths change: in the basin from the mouth, in the die from that place. The last region ends with the die, whose
 * length is told by itself.
 */
const regionEnds = ({ regions, floor, mouth }: Section, from: number): number[] =>
  regions.map(({ end }, index) => {
    if (index === regions.length - 1) return exact(end - floor.at(-1)!.x);
    return exact(end - (end > mouth + SAME_PLACE ? from : mouth));
  });

/** The measures of a section, as a comparison and a saved page tell them. */
export function sectionInputs(section: Section, units: PageUnits): InputWords[] {
  const { floor, roof, mouth } = section;
  const dieEnd = floor.at(-1)!.x;
  const ventsFrom = (from: number) =>
    section.vents.map((vent) => ({ ...vent, place: exact(vent.place - from) }));
  const widthsFrom = (from: number) => [
    section.regions.map(endWidths),
    regionEnds(section, from),
    section.cavities,
  ];
  const backWall = Math.abs(roof[0]!.y - floor[0]!.y);
  const input = (name: string, text: string, decides: unknown): InputWords => ({
    name,
    text,
    decides,
    group: 'section',
  });
  const fromEnd = (input: InputWords, decides: unknown): InputWords => ({
    ...input,
    fromEnd: { name: `${input.name} from the die end`, decides },
  });
  return [
    input('basin floor', basinFloor(section, units), basinHeights(section)),
    input('basin, length × back wall', lengthsBy([mouth - floor[0]!.x, backWall], units), [
      exact(mouth - floor[0]!.x),
      exact(backWall),
      lineBehind(floor.slice(1), mouth).map(([x]) => x),
    ]),
    input('opening over the basin', openingText(section, units), [
      openSpans(section),
      lineBehind(roof, mouth),
    ]),
    input('die, length × height', lengthsBy([floor.at(-1)!.x - mouth, dieHeight(section)], units), [
      linePast(floor, mouth),
      linePast(roof, mouth),
    ]),
    fromEnd(input('widths', widthsText(section, units), widthsFrom(mouth)), widthsFrom(dieEnd)),
    fromEnd(input('vents', ventsText(section, units), ventsFrom(mouth)), ventsFrom(dieEnd)),
    input('pivot', pivotText(section, units), [exact(section.pivot.x - mouth), exact(section.pivot.y)]),
  ];
}

function openingText({ roof, openings }: Section, units: PageUnits): string {
  const spans = openings.map((opening) =>
    opening.wall === 'back wall'
      ? 'back wall'
      : withUnit(shownLength(roof[opening.to]!.x - roof[opening.from]!.x, units)),
  );
  return spans.length === 0 ? 'closed' : listText(spans);
}
