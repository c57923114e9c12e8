import type { FigureRow } from './figures';
import { fixed, MINUS, significant } from './wording';

/** Two figures as they are read, and how far apart those are: a difference beside them must not contradict them. */
export interface ShownDifference {
  readonly reference: number;
  readonly value: number;
  /** Without sign, no finer than the coarser of the two unless it takes that to see it. */
  readonly size: string;
}

type Shown = Pick<FigureRow, 'value' | 'text'>;

/** The number a figure's text shows: "+12.5°", "630"; null where it is words, such as "under 1". */
function numberShown({ text }: Shown): number | null {
  const plain = text.replace(MINUS, '-').replace('°', '');
  return /^[+-]?\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}

const decimalsOf = ({ text }: Shown): number => /\.(\d+)/.exec(text)?.[1]?.length ?? 0;

/** The figures as shown; unrounded where one of them is shown in words. Null where either has no value. */
export function shownDifference(reference: Shown, figure: Shown): ShownDifference | null {
  if (reference.value === null || figure.value === null) return null;
  const [from, to] = [numberShown(reference), numberShown(figure)];
  if (from === null || to === null) {
    const size = significant(Math.abs(figure.value - reference.value));
    return { reference: reference.value, value: figure.value, size };
  }
  const [coarse, fine] = [decimalsOf(reference), decimalsOf(figure)].toSorted((a, b) => a - b);
  const size = Math.abs(to - from);
  const text = fixed(size, coarse!);
  return { reference: from, value: to, size: Number(text) === 0 ? fixed(size, fine!) : text };
}
