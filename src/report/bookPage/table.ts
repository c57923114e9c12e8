import { escaped } from '../drawing/paper';

/** A table of plain texts; the first of each row names the row. What follows a line break in a cell stands smaller below it. */
export interface PlainTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Columns from the left that hold words; the rest are figures, set to the right. */
  readonly words?: number;
  /** Words that belong to a row, by its number; they stand below it. */
  readonly below?: ReadonlyMap<number, string>;
  /** How its rows stand on a narrow page; labelled when not said and there are more than two columns. */
  readonly narrow?: Narrow;
}

/**
 * A row on a narrow page. `labelled`: its name, and below it each cell with the name of its column before it. `note`: name
 * and figure on a line, the last cell below. `run`: the first two cells as its name, what follows in one run of words, the
 * last cell below. Else as anywhere.
 */
type Narrow = 'labelled' | 'note' | 'run';

const LABELLED_FROM = 3;

/** A table that stacks or else scrolls by itself where the page is too narrow, by key as well. */
export function plainTable({
  caption,
  columns,
  rows,
  words = columns.length,
  below,
  narrow = columns.length < LABELLED_FROM ? undefined : 'labelled',
}: PlainTable): string {
  const side = (column: number): string => (column < words ? '' : ' class="r"');
  const label = (column: number): string =>
    narrow === 'labelled' ? ` data-column="${escaped(columns[column]!)}"` : '';
  const head = columns.map((text, at) => `<th scope="col"${side(at)}>${escaped(text)}</th>`).join('');
  const body = rows.map(([name = '', ...rest], index) => {
    const cells = rest.map((text, at) => `<td${side(at + 1)}${label(at + 1)}>${lines(text)}</td>`).join('');
    const more = below?.get(index);
    const belowRow = more
      ? `<tr class="below"><td colspan="${columns.length}"><span>${escaped(more)}</span></td></tr>`
      : '';
    return `<tr><th scope="row">${escaped(name)}</th>${cells}</tr>${belowRow}`;
  });
  return scrolled(
    caption,
    `<table${narrow ? ` class="${narrow}"` : ''}><caption>${escaped(caption)}</caption><thead><tr>${head}</tr></thead><tbody>${body.join('')}</tbody></table>`,
  );
}

function lines(text: string): string {
  const [first = '', ...rest] = text.split('\n').map(escaped);
  return first + rest.map((line) => `<span class="less">${line}</span>`).join('');
}

/** `table` is markup. */
export const scrolled = (name: string, table: string): string =>
  `<div class="table-box" role="group" aria-label="${escaped(name)}" tabindex="0">${table}</div>`;
