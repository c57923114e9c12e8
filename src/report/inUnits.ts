import {
  AREA,
  CONDUCTIVITY,
  DENSITY,
  HEAT_TRANSFER,
  LATENT_HEAT,
  LENGTH,
  MASS,
  type Measure,
  type PageUnits,
  SPECIFIC_HEAT,
  SPEED,
  SURFACE_TENSION,
  TEMPERATURE,
  VISCOSITY,
  VISCOSITY_IN_WORDS,
  VOLUME,
} from '$src/core/units';
import type { FigureRow } from './figures';
import { fixed, MINUS } from './wording';

/** One metric unit of the texts, what it becomes, and how many more decimals, or fewer, then say as much. */
interface Turn {
  readonly from: Measure;
  readonly to: Measure;
  readonly more: number;
  /** A figure is turned from its unrounded value, and may say so many more. */
  readonly finer: number;
}

/** Texts of the core and of reports are metric; this is what their units become. Empty when they stay. */
function turnsTo({ length, mass, temperature }: PageUnits): ReadonlyMap<string, Turn> {
  const turn = (from: Measure, to: Measure, more: number, finer = 0): Turn => ({ from, to, more, finer });
  const turns = [
    turn(LENGTH.mm, LENGTH[length], 2),
    turn(AREA.mm, AREA[length], 3),
    turn(VOLUME.mm, VOLUME[length], 1),
    turn(SPEED.mm, SPEED[length], -2, 1),
    turn(MASS.kg, MASS[mass], 0),
    turn(DENSITY.kg, DENSITY[mass], 4),
    turn(TEMPERATURE.degC, TEMPERATURE[temperature], 0),
    turn(HEAT_TRANSFER.mm, HEAT_TRANSFER[length], 0),
    turn(SURFACE_TENSION.mm, SURFACE_TENSION[length], -3),
    turn(LATENT_HEAT.kg, LATENT_HEAT[mass], 0),
    turn(SPECIFIC_HEAT.kg, SPECIFIC_HEAT[mass], 3),
    turn(CONDUCTIVITY.mm, CONDUCTIVITY[length], 0),
    turn(VISCOSITY.mm, VISCOSITY[length], -3),
    turn(VISCOSITY_IN_WORDS.mm, VISCOSITY_IN_WORDS[length], 0),
  ].filter(({ from, to }) => from !== to);
  return new Map(turns.map((one) => [one.from.unit, one]));
}

/** Decimals of a metric number in another unit. */
const decimalsIn = (text: string, { more }: Turn, extra = 0): number =>
  Math.max(0, decimalsOf(text) + more + extra);
const decimalsOf = (text: string): number => (text.includes('.') ? text.length - text.indexOf('.') - 1 : 0);

/** A metric number in words as the same measure in another unit, to the same fineness. */
function turned(text: string, turn: Turn, extra = 0): string {
  const { from, to } = turn;
  const value = numberOf(text);
  if (value === 0 && from.toShown(0) === 0) return text;
  const shown = fixed(to.toShown(from.fromShown(value)), decimalsIn(text, turn, extra));
  return text.startsWith('+') ? `+${shown}` : shown;
}

/** Thousands may be parted by a comma. */
const NUMBER = `[+\u2212-]?(?:\\d{1,3}(?:,\\d{3})+|\\d+)(?:\\.\\d+)?`;
const numberOf = (text: string): number => Number(text.replace(MINUS, '-').replaceAll(',', ''));
/** One number or several before one unit: "5 mm", "11 of 20 cm³", "1 to 2000 mm", "200 × 30 mm", "700–730 °C", "0.49 (0.44 to 0.54) m/s". */
const MEASURED = new RegExp(
  `(?<![\\w.])(${NUMBER}(?:(?: to | and | of | × |, |–| \\()${NUMBER})*\\)?) (mm²|mm|cm³|kg/m³|kg|°C|m/s|W/m²K|N/m|kJ/kg|J/kgK|W/mK|mPa s|Pa s)(?![\\w/²³])`,
  'g',
);
/** What stands between these is a name somebody gave. */
const QUOTED = /(“[^”]*”)/;
const ALL_QUOTED = new RegExp(QUOTED, 'g');
const SENTENCE_END = /[.!?]\s+/g;
const ALL_NUMBERS = new RegExp(NUMBER, 'g');

/** A text of the core or of a report in the page's units. Names in quotation marks stay as they were given. */
export function inUnits(text: string, units: PageUnits): string {
  const turns = turnsTo(units);
  if (turns.size === 0) return text;
  return sentencesOf(text)
    .map((sentence) => sentenceTurned(sentence, turns))
    .join('');
}

/** Sentences with what parts them; a name may hold a full stop. */
function sentencesOf(text: string): string[] {
  const plain = text.replace(ALL_QUOTED, (name) => '_'.repeat(name.length));
  const ends = [...plain.matchAll(SENTENCE_END)].map((found) => found.index + found[0].length);
  return [0, ...ends].map((from, index) => text.slice(from, ends[index]));
}

function sentenceTurned(sentence: string, turns: ReadonlyMap<string, Turn>): string {
  const parts = sentence.split(QUOTED);
  const extras = extraDigits(parts.filter((part) => !part.startsWith('“')).join(' '), turns);
  return parts.map((part) => (part.startsWith('“') ? part : measuresTurned(part, turns, extras))).join('');
}

/** Digits that the numbers of a unit get besides, so that two which differ do not read the same. */
type Extras = ReadonlyMap<string, number>;
const MOST_EXTRA = 2;

function extraDigits(words: string, turns: ReadonlyMap<string, Turn>): Extras {
  const told = new Map<string, Set<string>>();
  for (const [, numbers, unit] of words.matchAll(MEASURED))
    if (turns.has(unit!))
      told.set(unit!, new Set([...(told.get(unit!) ?? []), ...(numbers!.match(ALL_NUMBERS) ?? [])]));
  return new Map([...told].map(([unit, numbers]) => [unit, toTellApart([...numbers], turns.get(unit)!)]));
}

function toTellApart(numbers: readonly string[], turn: Turn): number {
  const values = new Set(numbers.map(numberOf));
  const isApart = (extra: number): boolean =>
    new Set(numbers.map((number) => turned(number, turn, extra))).size >= values.size;
  const enough = [0, 1, 2].find(isApart);
  return enough ?? MOST_EXTRA;
}

function measuresTurned(text: string, turns: ReadonlyMap<string, Turn>, extras: Extras): string {
  return text.replace(MEASURED, (found, numbers: string, unit: string) => {
    const turn = turns.get(unit);
    if (!turn) return found;
    const shown = numbers.replace(ALL_NUMBERS, (number) => turned(number, turn, extras.get(unit)));
    return `${shown} ${turn.to.unit}`;
  });
}

/** A figure in the page's units; its key stays, since it names the figure. */
export function figureIn<F extends Pick<FigureRow, 'value' | 'unit' | 'text'>>(
  figure: F,
  units: PageUnits,
): F {
  const turn = turnsTo(units).get(figure.unit);
  if (!turn) return figure;
  if (figure.value === null) return { ...figure, unit: turn.to.unit };
  const value = turn.to.toShown(turn.from.fromShown(figure.value));
  const isNought = Number(figure.text) === 0 && turn.from.toShown(0) === 0;
  const text = isNought ? figure.text : fixed(value, decimalsIn(figure.text, turn) + turn.finer);
  return { ...figure, value, text, unit: turn.to.unit };
}
