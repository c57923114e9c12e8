import type { FigureRow } from './figures';
import { type ShownDifference, shownDifference } from './shownDifference';
import { MESH_SPREAD } from './speedCall';
import { percentNumber, significant } from './wording';

type Manner =
  | 'moment'
  | 'duration'
  | 'speed'
  | 'inclination'
  | 'first flow'
  | 'amount'
  | 'share'
  | 'count'
  | 'temperature'
  | 'margin'
  | 'place';

/** How a figure's difference is said, by its key. */
const MANNERS: Readonly<Record<string, Manner>> = {
  first_flow_deg: 'first flow',
  first_flow_time_s: 'moment',
  peak_front_speed_m_per_s: 'speed',
  peak_front_speed_place_mm: 'place',
  peak_front_speed_time_s: 'moment',
  peak_front_speed_inclination_deg: 'inclination',
  share_above_critical_percent: 'share',
  arrival_time_s: 'moment',
  mouth_to_end_s: 'duration',
  filled_50_time_s: 'moment',
  filled_90_time_s: 'moment',
  filled_time_s: 'moment',
  fill_time_s: 'duration',
  final_share_percent: 'share',
  spilled_cm3: 'amount',
  arriving_temperature_C: 'temperature',
  lap_margin_s: 'margin',
  skin_folded_mm: 'amount',
  folds: 'count',
  folds_heavy: 'count',
  folds_marked: 'count',
  folds_slight: 'count',
  folds_borderline: 'count',
};

/** Parts that a founder calls by name, where a ratio is that to a twentieth. */
const PARTS = ['half', 'a third', 'a quarter', 'a fifth'] as const;

/** One part of so many: "half", "a third", "30 %". */
function part(ratio: number): string {
  const whole = Math.round(ratio);
  const named = Math.abs(ratio / whole - 1) <= 0.05 ? PARTS[whole - 2] : undefined;
  return named ?? `${percentNumber(1 / ratio)} %`;
}

/** Said in place of a difference that the mesh alone can make. */
const TOO_CLOSE = 'too close to call';

const more = (difference: number, up: string, down: string): string => (difference > 0 ? up : down);

/**
 * "2.4 times as fast", "half as fast", "12 % faster", of speeds that are not rounded: told in two figures, a share would be off by a half.
 * Below the mesh spread no difference is claimed.
 */
function speedDifference(from: number, to: number): string {
  const [low, high] = [from, to].toSorted((a, b) => a - b);
  if (low! <= 0) return '';
  if (high! / low! <= 1 + MESH_SPREAD) return TOO_CLOSE;
  const way = more(to - from, 'faster', 'slower');
  const ratio = Math.max(to / from, from / to);
  return ratio >= 1.5
    ? to > from
      ? `${significant(ratio)} times as fast`
      : `${part(ratio)} as fast`
    : `${percentNumber(Math.abs(to / from - 1))} % ${way}`;
}

function amountDifference({ reference, value, size }: ShownDifference, unit: string): string {
  if (reference > 0 && value > 0 && Math.max(value / reference, reference / value) >= 2)
    return value > reference
      ? `${significant(value / reference)} times as much`
      : `${part(reference / value)} as much`;
  return `${size} ${unit} ${more(value - reference, 'more', 'less')}`;
}

/**
 * The difference from a reference pour in words: "36.6° earlier", "2.56 s longer". It is that of the figures as they are
 * shown. Empty where either has no value, "the same" where both show alike.
 */
export function differenceText(reference: FigureRow, figure: FigureRow): string {
  if (reference.text === figure.text) return 'the same';
  const shown = shownDifference(reference, figure);
  if (shown === null) return '';
  const { size } = shown;
  const difference = shown.value - shown.reference;
  if (difference === 0) return 'the same';
  const { unit } = figure;
  switch (MANNERS[figure.key] ?? 'amount') {
    case 'moment':
      return `${size} s ${more(difference, 'later', 'earlier')}`;
    case 'duration':
      return `${size} s ${more(difference, 'longer', 'shorter')}`;
    case 'speed':
      return speedDifference(reference.value!, figure.value!);
    case 'inclination':
      return `${size}° ${more(difference, 'more uphill', 'more downhill')}`;
    case 'first flow':
      if (Math.abs(figure.value! - reference.value!) <= Math.max(reference.spread ?? 0, figure.spread ?? 0))
        return TOO_CLOSE;
      return `${size}° ${more(difference, 'earlier', 'later')}`;
    case 'share':
      return `${size} ${size === '1' ? 'point' : 'points'} ${more(difference, 'more', 'less')}`;
    case 'count':
      return `${size} ${more(difference, 'more', 'fewer')}`;
    case 'temperature':
      return `${size} ${unit} ${more(difference, 'warmer', 'colder')}`;
    case 'margin':
      return `${size} s ${more(difference, 'more', 'less')}`;
    case 'place':
      return `${size} ${unit} ${more(difference, 'further in', 'nearer the mouth')}`;
    case 'amount':
      return amountDifference(shown, unit);
  }
}
