import { standOf } from '$src/core/level/stand';
import { startLevel } from '$src/core/level/startLevel';
import type { Liquid } from '$src/core/metal/liquid';
import type { PourPlan } from '$src/core/pour/plan';
import { lineAt, SAME_PLACE, type Side } from '$src/core/section/lineAt';
import type { Point, Region, Section } from '$src/core/section/section';
import {
  LENGTH,
  MASS,
  METRIC,
  type PageUnits,
  toDegrees,
  toMillimetres,
  toMillipascalSeconds,
} from '$src/core/units';
import { heatWords } from './heatWords';
import { inUnits } from './inUnits';
import { shownLength, shownSpeed, withUnit } from './measureText';
import { fromLipWords } from './startLevelWords';
import { tiltWords } from './tiltWords';
import { countText, fixed, listText, significant } from './wording';

/** One input in words, with what decides it: two pours differ in it when `decides` differs. */
export interface InputWords {
  readonly name: string;
  readonly text: string;
  /** The raw values behind the words. */
  readonly decides: unknown;
  /**
   * The same with its places taken from the die end, and what it is then called: pours alike in it differ by the length
   * of the die alone, which is told by itself.
   */
  readonly fromEnd?: { readonly name: string; readonly decides: unknown };
  /** What it belongs to, for the line that says what is the same. */
  readonly group: 'section' | 'metal' | 'charge' | 'tilt' | 'heat' | 'computation';
  /** It decides what is advised or told of the pour, and not how the metal runs. */
  readonly isAside?: true;
  /** The words are as fine as an angle is set, a tenth of a degree: where they are alike, so is what was set. */
  readonly isToTenths?: true;
  /** Part of one choice, how the die is turned: its kind, pace, end and smoothing. Where it starts is another. */
  readonly isOfTilt?: true;
}

const equal = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/**
 * What keeps its distance to the mouth or to the end of a longer die differs by the length of the die, and by nothing of
 * its own: of several vents those before the place that gives way keep the one, those past it the other.
 */
export const isAlike = (one: InputWords, other: InputWords): boolean =>
  one.fromEnd && other.fromEnd
    ? keepsPlaces([one.decides, other.decides], [one.fromEnd.decides, other.fromEnd.decides])
    : equal(one.decides, other.decides);

type Two = readonly [unknown, unknown];

function keepsPlaces(fromMouth: Two, fromEnd: Two): boolean {
  if (equal(...fromMouth) || equal(...fromEnd)) return true;
  const [one, other, oneFromEnd, otherFromEnd] = [...fromMouth, ...fromEnd];
  return (
    Array.isArray(one) &&
    Array.isArray(other) &&
    one.length === other.length &&
    one.every((part, index) =>
      keepsPlaces(
        [part, other[index]],
        [(oneFromEnd as unknown[])[index], (otherFromEnd as unknown[])[index]],
      ),
    )
  );
}

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

/** What decides of a metal how it flows. */
export function metalInputs(liquid: Liquid, units: PageUnits): InputWords[] {
  const input = (name: string, value: number, text: string): InputWords => ({
    name,
    text,
    decides: value,
    group: 'metal',
  });
  return [
    input('density', liquid.density, inUnits(`${fixed(liquid.density, 0)} kg/m³`, units)),
    input('viscosity', liquid.viscosity, `${significant(toMillipascalSeconds(liquid.viscosity))} mPa s`),
    input('surface tension', liquid.surfaceTension, `${significant(liquid.surfaceTension)} N/m`),
    input('contact angle', liquid.contactAngle, `${fixed(toDegrees(liquid.contactAngle), 0)}°`),
    input('critical speed', liquid.criticalSpeed, withUnit(shownSpeed(liquid.criticalSpeed, units))),
  ];
}

function computationWords({ computation }: PourPlan): InputWords[] {
  const group = 'computation';
  const { meshCells, capillaryGate, settlingTime } = computation;
  const { gas = 'vents', conditions = null, endsWhenDecided = false } = computation;
  return [
    { name: 'mesh cells', text: String(meshCells), decides: meshCells, group },
    { name: 'capillary stand', text: capillaryGate ? 'on' : 'off', decides: capillaryGate, group },
    { name: 'given up after', text: `${significant(settlingTime)} s at rest`, decides: settlingTime, group },
    {
      name: 'gas',
      text: gas === 'vents' ? 'leaves by basin and vents' : 'leaves anywhere',
      decides: gas,
      group,
    },
    {
      name: 'ends and friction',
      text: conditions === null ? 'a closed die' : `${conditions.friction.kind} friction`,
      decides: conditions,
      group,
    },
    {
      name: 'ends when decided',
      text: endsWhenDecided ? 'yes' : 'no',
      decides: endsWhenDecided,
      group,
    },
  ];
}

/** Mass of the charge, to the last digit that decides: "0.582 kg". */
export function massText({ volume, liquid }: PourPlan, units: PageUnits = METRIC): string {
  const { unit, toShown } = MASS[units.mass];
  return `${toShown(volume * liquid.density).toPrecision(3)} ${unit}`;
}

/** Where the charge lies before the tilt, as its skin holds it and as charge cell and card tell it: " (8 mm below the lip)". */
function levelText({ section, volume, tilt, liquid }: PourPlan, units: PageUnits): string {
  const { held } = startLevel(section, volume, tilt.start, standOf(liquid));
  return held === null ? '' : ` (${fromLipWords(held, units)})`;
}

/** Nobody ladles to a part in a thousand: charges closer than that are one charge. */
const ladled = ({ volume, liquid }: PourPlan): number => Number((volume * liquid.density).toPrecision(3));

/** Every input of a pour in words, section first, computation last. Each kind of tilt has names of its own. */
export function inputWords(plan: PourPlan, units: PageUnits = METRIC): InputWords[] {
  const charge: InputWords = {
    name: 'charge',
    text: `${massText(plan, units)}${levelText(plan, units)}`,
    decides: ladled(plan),
    group: 'charge',
  };
  return [
    ...sectionInputs(plan.section, units),
    ...tiltWords(plan.tilt, units),
    charge,
    ...metalInputs(plan.liquid, units),
    ...heatWords(plan, units),
    ...computationWords(plan),
  ];
}
