import { METRIC, type PageUnits } from '$src/core/units';
import type { Margin } from './margins';
import { shownDistance, shownQuantity, shownValue, shownWithin } from './quantities';
import type { Region } from './region';
import { type CloseEdge, closeEdges } from './shopHold';
import type { NamedAxis } from './studyFile';

/** What a range ends at: an edge, the machine's limit, or only what was looked at. */
export type RangeEnd = 'edge' | 'machine' | 'looked at';

/** How far one setting may stray with the others as they are set, and the pour is still sound [unit of the axis]. */
export interface SoundRange {
  readonly name: string;
  readonly quantity: NamedAxis['quantity'];
  /** What is set; the range holds it. */
  readonly set: number;
  readonly from: number;
  readonly to: number;
  readonly below: RangeEnd;
  readonly above: RangeEnd;
  /** An edge nearer than a shop can hold; null when there is none. */
  readonly close: CloseEdge | null;
}

const endOf = ({ meets, isMachines }: Margin): RangeEnd =>
  isMachines ? 'machine' : meets === null ? 'looked at' : 'edge';

/**
 * The ranges that margins of a sound set point come to, one for each axis; none before margins are known. A range ends at
 * the first point that is not sound, so there is no hole in it.
 */
export function soundRanges(
  axes: readonly NamedAxis[],
  margins: readonly Margin[] | null,
  spreads: readonly number[] = [],
): SoundRange[] {
  const close = closeEdges(axes, margins, spreads);
  return axes.flatMap(({ name, quantity, setPoint }, index) => {
    const [below, above] = ([-1, 1] as const).map((way) =>
      margins?.find(({ axis, direction }) => axis === index && direction === way),
    );
    if (!below || !above || setPoint === null) return [];
    return [
      {
        name,
        quantity,
        set: setPoint,
        from: below.limit,
        to: above.limit,
        below: endOf(below),
        above: endOf(above),
        close: close.find(({ margin }) => margin.axis === index) ?? null,
      },
    ];
  });
}

const END_WORDS: Readonly<Record<RangeEnd, string>> = {
  edge: '',
  machine: ", the machine's limit",
  'looked at': ', as far as was looked',
};

/** The range, rounded inwards so that nothing in it is past an edge: "11.9 s to 13.5 s", "+17.6° to +20°, the machine's limit". */
export function rangeWords(
  { set, from, to, quantity, below, above }: SoundRange,
  units: PageUnits = METRIC,
): string {
  const [low, high] = [shownWithin(from, 1, quantity, units), shownWithin(to, -1, quantity, units)];
  if (low.number >= high.number) return `${shownValue(set, quantity, units)} alone`;
  if (below === 'looked at' && above === 'looked at')
    return `${low.text} to ${high.text}, as far as was looked`;
  const lower = `${below === 'edge' ? '' : 'from '}${low.text}${END_WORDS[below]}${below === 'edge' ? '' : ','}`;
  return `${lower} to ${high.text}${END_WORDS[above]}`;
}

/** What lies past an edge, as what one is near to. */
const NEAR: Readonly<Record<Region, string>> = {
  sound: 'sound',
  'near the limit': 'a limit',
  'folds film': 'folding film',
  'folds film and laps': 'folding film and lapping',
  'folds film and spills': 'folding film and spilling metal',
  'folds film, laps and spills': 'folding film, lapping and spilling metal',
  laps: 'lapping',
  misrun: 'misrun',
  'gas held': 'holding gas',
  'not filled': 'not filling',
  'spills metal': 'spilling metal',
  'in the die while ladling': 'metal in the die while ladling',
  'outside the machine': 'what the machine can do',
  'no such pour': 'no pour',
  'not computed': 'what could not be computed',
};

/** "only 0.1 s from misrun". */
export function closeWords(
  { margin: { distance, meets } }: CloseEdge,
  quantity: NamedAxis['quantity'],
  units: PageUnits = METRIC,
): string {
  return `${roomWords(distance, quantity, units)} from ${NEAR[meets]}`;
}

/** A room too small to be shown is told as less than the least that is. */
function roomWords(distance: number, quantity: NamedAxis['quantity'], units: PageUnits): string {
  const text = shownDistance(distance, quantity, units);
  if (Number.parseFloat(text) > 0) return `only ${text}`;
  const { decimals } = shownQuantity(quantity, units);
  return `less than ${text.replace(/^[\d.]+/, (10 ** -decimals).toFixed(decimals))}`;
}
