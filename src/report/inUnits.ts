import {
  AREA,
  DENSITY,
  LENGTH,
  MASS,
  type Measure,
  type PageUnits,
  SPEED,
  TEMPERATURE,
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
  ].filter(({ from, to }) => from !== to);
  return new Map(turns.map((one) => [one.from.unit, one]));
}

/** Decimals of a metric number in another unit. */
const decimalsIn = (text: string, { more }: Turn): number => Math.max(0, decimalsOf(text) + more);
const decimalsOf = (text: string): number => (text.includes('.') ? text.length - text.indexOf('.') - 1 : 0);

/** A metric number in words as the same measure in another unit, to the same fineness. */
function turned(text: string, turn: Turn): string {
  const { from, to } = turn;
  const value = Number(text.replace(MINUS, '-'));
  if (value === 0 && from.toShown(0) === 0) return text;
  const shown = fixed(to.toShown(from.fromShown(value)), decimalsIn(text, turn));
  return text.startsWith('+') ? `+${shown}` : shown;
}

const NUMBER = `[+\u2212-]?\\d+(?:\\.\\d+)?`;
/** One number or several before one unit: "5 mm", "11 of 20 cm³", "1 to 2000 mm", "200 × 30 mm", "700–730 °C", "0.49 (0.44 to 0.54) m/s". */
const MEASURED = new RegExp(
  `(?<![\\w.])(${NUMBER}(?:(?: to | and | of | × |, |–| \\()${NUMBER})*\\)?) (mm²|mm|cm³|kg/m³|kg|°C|m/s)(?![\\w/²³])`,
  'g',
);
/** What stands between these is a name somebody gave. */
const QUOTED = /(“[^”]*”)/;

/** A text of the core or of a report in the page's units. Names in quotation marks stay as they were given. */
export function inUnits(text: string, units: PageUnits): string {
  const turns = turnsTo(units);
  if (turns.size === 0) return text;
  return text
    .split(QUOTED)
    .map((part) => (part.startsWith('“') ? part : measuresTurned(part, turns)))
    .join('');
}

function measuresTurned(text: string, turns: ReadonlyMap<string, Turn>): string {
  return text.replace(MEASURED, (found, numbers: string, unit: string) => {
    const turn = turns.get(unit);
    if (!turn) return found;
    const shown = numbers.replace(new RegExp(NUMBER, 'g'), (number) => turned(number, turn));
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
