import { fixed } from './wording';

const decimalsOf = (text: string): number => text.split('.')[1]?.length ?? 0;
/** A number alone, whatever its sign: words and units are left as they are. */
const isPlain = (text: string): boolean => /^[+\u2212-]?\d+(\.\d+)?$/.test(text);

/**
 * The numbers of a column of a table, all with as many decimals as the finest of them, so that 0.60 stands above 0.57.
 * `texts` are the values each written by itself; one that is more than a number stays.
 */
export function evenFigures(values: readonly number[], texts: readonly string[]): string[] {
  const decimals = Math.max(0, ...texts.filter(isPlain).map(decimalsOf));
  return texts.map((one, index) =>
    isPlain(one) && decimalsOf(one) < decimals
      ? `${one.startsWith('+') ? '+' : ''}${fixed(values[index]!, decimals)}`
      : one,
  );
}
