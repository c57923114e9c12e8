import type { FoldKind } from '$src/core/pour/record';
import { METRIC, type PageUnits } from '$src/core/units';
import { bold, plain, type Sentence } from '../sentence';
import { capital } from '../wording';
import { soFar } from './curve';
import { type Feeders, feederWords } from './feeders';
import { axisIndex, axisValue, coarsePoints, type Grid, gridOf, placeOf } from './grid';
import type { Margin } from './margins';
import type { TriedChange } from './openings';
import { shownDistance, shownValue } from './quantities';
import { filledMap } from './refine';
import { foldsFilm, isPoured, type PointResult, type Region, regionOf } from './region';
import { faultWords, regionAndFeeder, regionWords, shortageOf } from './regionWords';
import { soundWords } from './soundWords';
import type { NamedAxis } from './studyFile';

export type Results = ReadonlyMap<number, PointResult>;

/** What a study comes to, for picture and words: a map, or a curve, which has one row. */
export interface MapAnswer {
  readonly grid: Grid;
  readonly regions: readonly Region[];
  /** True where a pour was computed; elsewhere the region is taken from the nearest computed pour. */
  readonly isComputed: readonly boolean[];
  /** What the feeder lacks by the same pour; null where that is nothing or not told. */
  readonly shortages: readonly (string | null)[];
  /** The fold most points of the folding region have, null when none. */
  readonly mainFold: FoldKind | null;
}

export function mapAnswer(axes: readonly NamedAxis[], results: Results): MapAnswer | null {
  const grid = gridOf({ axes });
  const known = new Map([...results].map(([point, result]) => [point, regionOf(result)]));
  const filled = filledMap(grid, known);
  if (!filled) return null;
  return {
    grid,
    regions: filled.map(({ region }) => region),
    isComputed: filled.map(({ from }, point) => from === point),
    shortages: filled.map(({ from }) => shortageOf(results.get(from)!)),
    mainFold: mainFold(results),
  };
}

function mainFold(results: Results): FoldKind | null {
  const counts = new Map<FoldKind, number>();
  for (const result of results.values()) {
    if (!('figures' in result) || result.figures.cause === null || !foldsFilm(regionOf(result))) continue;
    counts.set(result.figures.cause, (counts.get(result.figures.cause) ?? 0) + 1);
  }
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

const valueWords = (
  axes: readonly NamedAxis[],
  values: Readonly<Record<string, number>>,
  units: PageUnits,
): string =>
  axes
    .map(({ setting, name, quantity }) => `${name} ${shownValue(values[setting]!, quantity, units)}`)
    .join(', ');

interface Stretch {
  readonly row: number;
  readonly from: number;
  readonly to: number;
}

/** What of a study is meant, by number of a point. */
type IsMeant = (point: number) => boolean;

/** The stretches of what is meant along each row. */
function stretchesOf({ grid }: MapAnswer, isMeant: IsMeant): Stretch[] {
  const found: Stretch[] = [];
  for (let row = 0; row < grid.rows; row++) {
    let from: number | null = null;
    for (let column = 0; column <= grid.columns; column++) {
      if (column < grid.columns && isMeant(column + row * grid.columns)) from ??= column;
      else if (from !== null) {
        found.push({ row, from, to: column - 1 });
        from = null;
      }
    }
  }
  return found;
}

/** A share of the rows of a map: as near as that to what is set, a row is as good as its own. Ours. */
const NEAR_ROWS = 0.1;

interface Telling {
  readonly stretch: Stretch;
  /** It lies in another row, further from what is set than what is near. */
  readonly isElsewhere: boolean;
}

/**
 * The stretch the set point lies in, else the longest of the nearest row that has one, and only where none is near the
 * longest of all: what one would tell the next shift, who have the die as it is.
 */
function tellingStretch(axes: readonly NamedAxis[], answer: MapAnswer, isMeant: IsMeant): Telling | null {
  const stretches = stretchesOf(answer, isMeant);
  const [column, row = 0] = axes.map((axis) =>
    axis.setPoint === null ? -1 : Math.round(axisIndex(axis, axis.setPoint)),
  );
  const own = stretches.find((one) => one.row === row && one.from <= column! && column! <= one.to);
  if (own) return { stretch: own, isElsewhere: false };
  const longest = stretches.toSorted((a, b) => b.to - b.from - (a.to - a.from));
  const reach = Math.max(1, Math.round(NEAR_ROWS * (answer.grid.rows - 1)));
  const away = (one: Stretch): number => Math.abs(one.row - row);
  const [near] = longest.filter((one) => away(one) <= reach).toSorted((a, b) => away(a) - away(b));
  if (near) return { stretch: near, isElsewhere: false };
  const [stretch] = longest;
  return stretch ? { stretch, isElsewhere: axes.every(({ setPoint }) => setPoint !== null) } : null;
}

function stretchWords(
  axes: readonly NamedAxis[],
  answer: MapAnswer,
  region: Region,
  units: PageUnits,
): string {
  const found = tellingStretch(axes, answer, (point) => answer.regions[point] === region);
  if (!found) return '';
  const told = `${placedRange(axes, found.stretch, units)} is ${regionWords(region)}.`;
  const [, up] = axes;
  if (!found.isElsewhere || !up || up.setPoint === null) return ` ${told}`;
  const set = `${up.name} ${shownValue(up.setPoint, up.quantity, units)}`;
  return ` Nothing is ${regionWords(region)} near ${set}, as it is set. The widest range lies elsewhere: ${told.replace(/^At/, 'at')}`;
}

/** "At start angle +20°, tilt time 3 s to 5 s"; of a curve "Tilt time 3 s to 5 s". */
function placedRange([across, up]: readonly NamedAxis[], stretch: Stretch, units: PageUnits): string {
  const value = (axis: NamedAxis, index: number) => shownValue(axisValue(axis, index), axis.quantity, units);
  const [low, high] = [value(across!, stretch.from), value(across!, stretch.to)];
  const range = `${across!.name} ${stretch.from === stretch.to ? low : `${low} to ${high}`}`;
  return up ? `At ${up.name} ${value(up, stretch.row)}, ${range}` : capital(range);
}

/** Of a curve every point is computed: where some of its sound points are fed and others are not, the fed ones are told. */
function fedWords(
  axes: readonly NamedAxis[],
  answer: MapAnswer,
  { sound, short }: Feeders,
  units: PageUnits,
): string {
  if (axes.length > 1 || short === 0 || short === sound) return '';
  const isFed = (point: number) => answer.regions[point] === 'sound' && answer.shortages[point] === null;
  const found = tellingStretch(axes, answer, isFed);
  return found
    ? ` ${placedRange(axes, found.stretch, units)} fills quietly and has a feeder that is enough.`
    : '';
}

export interface AnswerParts {
  readonly axes: readonly NamedAxis[];
  readonly answer: MapAnswer;
  /** Region at the set point; null when it is not known or not a point of the study. */
  readonly setRegion: Region | null;
  readonly margins: readonly Margin[] | null;
  readonly tried: readonly TriedChange[] | null;
  readonly isDone: boolean;
  /** How far repeats stray on each axis, either way; 0 where that is not known. */
  readonly spreads: readonly number[];
  /** Pours of the first look over the whole range that are computed, and how many it has. */
  readonly firstLook: { readonly computed: number; readonly count: number };
  readonly feeders: Feeders;
}

/** How far the first look is: before it is done a map is one answer spread over everything. */
export function firstLookOf(answer: MapAnswer): AnswerParts['firstLook'] {
  const points = coarsePoints(answer.grid);
  return { computed: points.filter((point) => answer.isComputed[point]).length, count: points.length };
}

/** The study in one sentence, as one would say it at the machine. What may still change is told as so far. */
export function answerSentence(parts: AnswerParts, units: PageUnits = METRIC): Sentence {
  const sentence = wholeSentence(parts, units);
  if (parts.isDone || parts.firstLook.computed < parts.firstLook.count) return sentence;
  const [lead, ...rest] = sentence;
  return [bold(soFar(lead!.text)), ...rest];
}

function wholeSentence(
  { axes, answer, setRegion, margins, tried, spreads, firstLook, feeders }: AnswerParts,
  units: PageUnits,
): Sentence {
  if (firstLook.computed < firstLook.count) {
    const [computed, count] = [firstLook.computed, firstLook.count];
    return [
      bold('Being looked over.'),
      plain(
        ` ${computed} of the first ${count} pours are computed; what this range comes to is said after them.${ofSetting(setRegion, feeders)}`,
      ),
    ];
  }
  const window = axes.length > 1 ? 'window' : 'sound range';
  const told = `${feederWords(feeders)}${fedWords(axes, answer, feeders, units)}`;
  const poured = answer.regions.filter(isPoured).length;
  const soundCount = answer.regions.filter((region) => region === 'sound').length;
  if (poured === 0)
    return [bold('No pour here.'), plain(' Nothing in this range can be poured as it is set.')];
  const isSetSound = setRegion === 'sound';
  if (soundCount === 0 && !(isSetSound && holdsSetPoint(axes))) {
    const found = tried?.some(({ soundAt }) => soundAt !== null);
    const next =
      tried === null
        ? ''
        : found
          ? ' A change below opens it.'
          : ' None of the changes tried opens it; another kind of tilt was not tried.';
    const besides = isSetSound ? ofSetting(setRegion, feeders) : '';
    const nearest = stretchWords(axes, answer, 'near the limit', units);
    if (nearest !== '')
      return [
        bold(`No clear ${window}.`),
        plain(` Nothing in this range is sound beyond doubt.${nearest}${next}${besides}`),
      ];
    return [bold(`No ${window}.`), plain(` Nothing is sound anywhere in this range.${next}${besides}`)];
  }
  const range = stretchWords(axes, answer, 'sound', units);
  if (isSetSound) {
    const shortage = feeders.atSetting;
    const { lead, rest } = soundWords({ axes, answer, margins, spreads, shortage }, units);
    return [bold(lead), plain(`${rest.close}${rest.range ?? range}${rest.holes}${told}`)];
  }
  if (setRegion === null) return [bold(`There is a ${window}.`), plain(`${range}${told}`)];
  return [
    bold(`The setting ${regionWords(setRegion)}.`.replace('setting near', 'setting is near')),
    plain(`${range}${told}`),
  ];
}

/** A range may leave out what is set; within it the setting may be sound by itself, between two points that are not. */
export const holdsSetPoint = (axes: readonly NamedAxis[]): boolean =>
  axes.every(
    ({ from, to, setPoint }) =>
      setPoint !== null && setPoint >= Math.min(from, to) && setPoint <= Math.max(from, to),
  );

/** The point of the setting itself is computed first, and does not change. */
const ofSetting = (region: Region | null, { atSetting }: Feeders): string =>
  region === null ? '' : ` The setting itself: ${regionAndFeeder(region, atSetting)}.`;

/** One margin in words: "6.9 s shorter, then folds film". */
export function marginWords(axes: readonly NamedAxis[], margin: Margin, units: PageUnits = METRIC): string {
  const { axis, direction, distance, meets } = margin;
  const { name, quantity } = axes[axis]!;
  const way = direction < 0 ? 'less' : 'more';
  if (margin.isMachines) return `${name}: sound to the machine's limit, ${way}`;
  if (distance === null || meets === null) return `${name}: sound to the end of the range, ${way}`;
  return `${shownDistance(distance, quantity, units)} ${way} ${name}, to ${faultWords(margin, meets)}`;
}

/** Where a change opens a window: "charge 0.61 kg: sound at tilt time 6 s, start angle +30°". */
export function triedWords(
  axes: readonly NamedAxis[],
  change: string,
  { soundAt, unjudged }: TriedChange,
  units: PageUnits = METRIC,
): string {
  if (unjudged) return `${change}: nothing to judge, ${regionWords(unjudged)}`;
  return soundAt === null
    ? `${change}: nothing sound`
    : `${change}: sound at ${valueWords(axes, soundAt, units)}`;
}

/** Computed pours whose die fills and whose feeder cannot feed it, by number of the point. */
export const shortPoints = ({ shortages, isComputed }: MapAnswer): readonly number[] =>
  shortages.flatMap((shortage, point) => (shortage !== null && isComputed[point] ? [point] : []));

/** "Feeder short at 12 of the 30 sound or nearly sound pours computed"; empty where all are fed. For those who cannot see the map. */
export function shortCountWords(answer: MapAnswer): string {
  const short = shortPoints(answer).length;
  if (short === 0) return '';
  const judged = answer.regions.filter(
    (region, point) => answer.isComputed[point] && (region === 'sound' || region === 'near the limit'),
  );
  return ` The feeder is short at ${short === judged.length ? 'all' : short} of the ${judged.length} computed pours that are sound or near a limit.`;
}

/** How the points spread over the regions, largest first: for those who cannot see the map. */
export function regionCounts({ regions }: MapAnswer): readonly (readonly [Region, number])[] {
  const counts = new Map<Region, number>();
  for (const region of regions) counts.set(region, (counts.get(region) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1]);
}

/**
 * Points of what is meant, the deepest first: those with the most room between them and what is not, where a name can
 * stand. The sides of the map count as somewhat further away than they are.
 */
export function deepestPoints({ grid, regions }: MapAnswer, isMeant: IsMeant): readonly number[] {
  const others = regions.flatMap((_, point) => (isMeant(point) ? [] : [placeOf(grid, point)]));
  const depthOf = (point: number): number => {
    const [column, row] = placeOf(grid, point);
    const toSide = Math.min(column + 1, grid.columns - column) * 1.2;
    const toEnd = Math.min(row + 1, grid.rows - row) * 1.2;
    return others.reduce(
      (least, [c, r]) => Math.min(least, Math.hypot(c - column, r - row)),
      Math.min(toSide, toEnd),
    );
  };
  return regions
    .flatMap((_, point) => (isMeant(point) ? [{ point, depth: depthOf(point) }] : []))
    .toSorted((a, b) => b.depth - a.depth)
    .map(({ point }) => point);
}
