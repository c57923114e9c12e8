import type { RepeatBand } from '../tilt';
import type { Treated } from './treatReadings';

export interface Repeats {
  /** The repeat whose time is the middle one: a tilt that was really turned, not a mean of several. */
  readonly typical: Treated;
  /** Its place among the repeats. */
  readonly index: number;
  /** null with a single one. */
  readonly band: RepeatBand | null;
}

/** Several measured tilts of one setting: the typical one, and how far they stray from their mean. */
export function repeatsOf(all: readonly Treated[]): Repeats {
  const order = all.map((_, index) => index).sort((a, b) => timeOf(all[a]!) - timeOf(all[b]!));
  const index = order[Math.floor((order.length - 1) / 2)]!;
  return { typical: all[index]!, index, band: all.length < 2 ? null : bandOf(all) };
}

const timeOf = ({ knots }: Treated): number => knots.at(-1)?.time ?? 0;
const rateOf = (one: Treated): number =>
  (one.start - (one.knots.at(-1)?.inclination ?? one.start)) / timeOf(one);

const bandOf = (all: readonly Treated[]): RepeatBand => ({
  count: all.length,
  start: deviation(all.map(({ start }) => start)),
  time: deviation(all.map(timeOf)),
  rate: deviation(all.map(rateOf)),
});

/** Standard deviation of the repeats about their mean, of a sample (n − 1). */
function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1));
}
