import type { PageUnits } from '$src/core/units';
import { capital, countText, listText } from '../wording';
import type { MapAnswer } from './mapAnswer';
import { holesPast, lineFrom, pastEdge } from './mapLine';
import type { Margin } from './margins';
import { shownDistance, shownValue } from './quantities';
import { regionWords } from './regionWords';
import { type CloseEdge, closeEdges } from './shopHold';
import { closeWords, rangeWords, soundRanges } from './soundRanges';
import type { NamedAxis } from './studyFile';

interface SoundParts {
  readonly axes: readonly NamedAxis[];
  readonly answer: MapAnswer;
  readonly margins: readonly Margin[] | null;
  /** How far repeats stray on each axis, either way; 0 where that is not known. */
  readonly spreads: readonly number[];
  /** What the feeder of the setting lacks; null where that is nothing. */
  readonly shortage: string | null;
}

/** What is said of a setting that is sound; `range` is null before its margins are found. */
export interface SoundWords {
  readonly lead: string;
  readonly rest: { readonly close: string; readonly range: string | null; readonly holes: string };
}

export function soundWords(
  { axes, answer, margins, spreads, shortage }: SoundParts,
  units: PageUnits,
): SoundWords {
  const close = closeEdges(axes, margins, spreads);
  const told = close.find(({ hold }) => hold.isOwn) ?? close[0];
  return {
    lead: shortage ? shortLead(shortage, axes, told, units) : leadOf(axes, told, units),
    rest: {
      close: told ? strayWords(axes, told, units) : '',
      range: marginRange(axes, margins, units),
      // They are told of the range between the margins; before those are known another row may be told.
      holes: margins ? ([-1, 1] as const).map((way) => holeWords(axes, answer, way, units)).join('') : '',
    },
  };
}

function leadOf(axes: readonly NamedAxis[], told: CloseEdge | undefined, units: PageUnits): string {
  if (!told) return 'The setting is sound.';
  if (told.hold.isOwn) return 'The setting is sound, its repeats are not.';
  const { quantity } = axes[told.margin.axis]!;
  return `The setting is sound, but ${closeWords(told, quantity, units)}.`;
}

/** As the verdict of a pour: nothing is called sound whose feeder is short. */
function shortLead(
  shortage: string,
  axes: readonly NamedAxis[],
  told: CloseEdge | undefined,
  units: PageUnits,
): string {
  const lead = `The setting fills quietly, but ${shortage}`;
  if (!told) return `${lead}.`;
  if (told.hold.isOwn) return `${lead}; its repeats do not all fill quietly.`;
  return `${lead}; it is ${closeWords(told, axes[told.margin.axis]!.quantity, units)}.`;
}

function strayWords(axes: readonly NamedAxis[], { margin, hold }: CloseEdge, units: PageUnits): string {
  const { name, quantity } = axes[margin.axis]!;
  const way = margin.direction < 0 ? 'less' : 'more';
  const stray = shownDistance(hold.within, quantity, units);
  const fault = regionWords(margin.meets);
  if (!hold.isOwn) {
    const step = hold.words === stray.replace(/\.0°$/, '°') ? hold.words : `${hold.words}, ${stray}`;
    return ` With that much ${way} ${name} it ${isIt(fault)}; a shop holds ${name} to about ${step} (common practice, no source).`;
  }
  const room = shownDistance(margin.distance, quantity, units);
  return ` They stray by ${stray} of ${name}, and ${room} ${way} it ${isIt(fault)}.`;
}

const isIt = (fault: string): string => (fault.startsWith('near') ? `is ${fault}` : fault);

/** How far the setting across may stray with the other as it is set. */
function marginRange(
  axes: readonly NamedAxis[],
  margins: readonly Margin[] | null,
  units: PageUnits,
): string | null {
  const [across, up] = axes;
  const range = soundRanges(axes, margins).find(({ name }) => name === across?.name);
  if (!across || !range) return null;
  const words = rangeWords(range, units);
  // What is said aside at its end, as that it is the machine's limit, ends with a comma before the sentence goes on.
  const told = `${across.name} ${words}${/, [^,]*$/.test(words) && range.above !== 'edge' ? ',' : ''} is sound.`;
  if (!up) return ` ${capital(told)}`;
  if (up.setPoint === null) return null;
  return ` At ${up.name} ${shownValue(up.setPoint, up.quantity, units)}, ${told}`;
}

/** More holes than these are counted. */
const MOST_TOLD = 3;

/** What lies past the sound range in the row of the set point, where it is sound there again. */
function holeWords(
  axes: readonly NamedAxis[],
  answer: MapAnswer,
  direction: -1 | 1,
  units: PageUnits,
): string {
  const [across] = axes;
  const past = pastEdge(axes, answer, { axis: 0, direction });
  if (!across || past === 'nothing sound') return '';
  const holes = holesPast(lineFrom(axes, answer, 0, direction));
  const at = (value: number): string => shownValue(value, across.quantity, units);
  const way = `${direction < 0 ? 'less' : 'more'} ${across.name}`;
  if (past === 'alternates')
    return ` The edge at ${way} is not resolved: points of different kinds alternate.`;
  const told = holes
    .slice(0, MOST_TOLD)
    .map(({ value, region }) => `${at(value)} ${isIt(regionWords(region))}`);
  const text = holes.length > MOST_TOLD ? countText(holes.length, 'point') : listText(told);
  return ` At ${way} there are sound points again, with points between that are not: ${text}.`;
}
