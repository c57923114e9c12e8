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
}

/** A table that scrolls by itself where the page is too narrow, also by key. */
export function plainTable({ caption, columns, rows, words = columns.length, below }: PlainTable): string {
  const side = (column: number): string => (column < words ? '' : ' class="r"');
  const head = columns.map((text, at) => `<th scope="col"${side(at)}>${escaped(text)}</th>`).join('');
  const body = rows.map(([name = '', ...rest], index) => {
    const cells = rest.map((text, at) => `<td${side(at + 1)}>${lines(text)}</td>`).join('');
    const more = below?.get(index);
    const belowRow = more
      ? `<tr class="below"><td colspan="${columns.length}"><span>${escaped(more)}</span></td></tr>`
      : '';
    return `<tr><th scope="row">${escaped(name)}</th>${cells}</tr>${belowRow}`;
  });
  return scrolled(
    caption,
    `<table><caption>${escaped(caption)}</caption><thead><tr>${head}</tr></thead><tbody>${body.join('')}</tbody></table>`,
  );
}

function lines(text: string): string {
  const [first = '', ...rest] = text.split('\n').map(escaped);
  return first + rest.map((line) => `<span class="less">${line}</span>`).join('');
}

/** `table` is markup. */
export const scrolled = (name: string, table: string): string =>
  `<div class="table-box" role="group" aria-label="${escaped(name)}" tabindex="0">${table}</div>`;
