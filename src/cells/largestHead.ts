import { volumeFromHead } from '$src/core/level/head';
import type { Section } from '$src/core/section/section';
import { fromMillimetres, toMillimetres } from '$src/core/units';

/** The largest head in whole millimetres [m] that a charge leaves, less than one that none does; 0 when there is none. */
export function largestHead(section: Section, start: number, end: number, over: number): number {
  let [good, bad] = [0, Math.ceil(toMillimetres(over))];
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (volumeFromHead(section, start, end, fromMillimetres(middle)) === null) bad = middle;
    else good = middle;
  }
  return fromMillimetres(good);
}
