import { escaped, short } from '../drawing/paper';
import { shortNames } from '../shortNames';

/** Where a line ends, in units of the field, and what it is called. */
export interface LineEnd {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

/** Room between field and words, in units of its own; stretched to the room there is. */
const GUTTER = 100;
/** Height of a label in units of the field, where that is lowest. */
const LINE = 40;

/** Places down the field for labels beside their ends, none nearer to the next than a line, in the order of the ends. */
export function spread(ends: readonly number[], height: number): readonly number[] {
  const order = ends.map((_, index) => index).toSorted((a, b) => ends[a]! - ends[b]!);
  const places = [...ends];
  let above = Number.NEGATIVE_INFINITY;
  for (const index of order) above = places[index] = Math.max(ends[index]!, above + LINE);
  let below = height + LINE;
  for (const index of order.toReversed()) below = places[index] = Math.min(places[index]!, below - LINE);
  return places;
}

/**
 * Each line led from its end to a label right of the field: its number, which stands in the key too, and where there is
 * room a short name. `within` belongs into the picture of the field, `beside` after it.
 */
export function lineEnds(ends: readonly LineEnd[], width: number, height: number) {
  const names = shortNames(ends.map(({ name }) => name));
  const places = spread(
    ends.map(({ y }) => y),
    height,
  );
  const within = ends.map(({ x, y }) => `<path class="led" d="M${short(x)} ${short(y)}H${width}"/>`).join('');
  const leaders = ends.map(
    ({ y }, index) => `<path class="led" d="M0 ${short(y)}L${GUTTER} ${short(places[index]!)}"/>`,
  );
  const labels = ends.map(
    ({ name }, index) =>
      `<span class="end" style="top:${short((places[index]! / height) * 100)}%" title="${escaped(name)}"><b>${index + 1}</b>${names ? ` <i>${escaped(names[index]!)}</i>` : ''}</span>`,
  );
  const beside = `<svg class="gutter" viewBox="0 0 ${GUTTER} ${height}" preserveAspectRatio="none" aria-hidden="true">${leaders.join('')}</svg>${labels.join('')}`;
  return { within, beside };
}
