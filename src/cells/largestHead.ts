import { volumeFromHead } from '$src/core/level/head';
import type { Section } from '$src/core/section/section';
import { fromMillimetres, toMillimetres } from '$src/core/units';

/** The largest head in whole millimetres [m], less than one that no charge leaves, that a charge leaves; null when none does. */
export function largestHead(section: Section, start: number, end: number, over: number): number | null {
  const goes = (millimetres: number): boolean =>
    volumeFromHead(section, start, end, fromMillimetres(millimetres)) !== null;
  if (over <= 0 || !goes(0)) return null;
  let [good, bad] = [0, Math.ceil(toMillimetres(over))];
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (goes(middle)) good = middle;
    else bad = middle;
  }
  return good > 0 ? fromMillimetres(good) : null;
}
