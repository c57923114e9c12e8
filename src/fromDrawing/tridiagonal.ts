/** One equation of each unknown with those before and behind it. */
export type Tridiagonal = readonly {
  readonly below: number;
  readonly middle: number;
  readonly above: number;
  readonly right: number;
}[];

/** Solves equations in a line: the first has none before it, the last none behind. Diagonally dominant, so not pivoted. */
export function solvedInLine(rows: Tridiagonal): number[] {
  const [shares, values]: [number[], number[]] = [[], []];
  for (const [index, { below, middle, above, right }] of rows.entries()) {
    const [share, value] = index === 0 ? [0, 0] : [shares[index - 1]!, values[index - 1]!];
    const pivot = middle - below * share;
    shares.push(above / pivot);
    values.push((right - below * value) / pivot);
  }
  for (let index = rows.length - 2; index >= 0; index--)
    values[index]! -= shares[index]! * values[index + 1]!;
  return values;
}

/**
 * Solves equations in a ring of three or more: before the first stands the last. The corners are taken out as a product
 * of two vectors and put back after (J. Sherman & W. J. Morrison, Annals of Mathematical Statistics 21 (1950) 124).
 */
export function solvedAround(rows: Tridiagonal): number[] {
  const [first, last] = [rows[0]!, rows.at(-1)!];
  const end = rows.length - 1;
  const shift = -first.middle;
  const inLine = (rights: readonly number[]): number[] =>
    solvedInLine(
      rows.map((row, index) => {
        const change = index === 0 ? -shift : index === end ? -(first.below * last.above) / shift : 0;
        return { ...row, middle: row.middle + change, right: rights[index]! };
      }),
    );
  const plain = inLine(rows.map(({ right }) => right));
  const corner = inLine(rows.map((_, index) => (index === 0 ? shift : index === end ? last.above : 0)));
  const seen = (list: readonly number[]): number => list[0]! + (first.below / shift) * list[end]!;
  const share = seen(plain) / (1 + seen(corner));
  return plain.map((value, index) => value - share * corner[index]!);
}
