import type { Book } from '$src/cells/kinds';
import type { Section } from '$src/core/section/section';

/** A book as it lies in the browser's store. */
export interface KeptBook {
  /** Text of its book file. */
  readonly text: string;
  readonly savedAt: Date;
  /** Changed here, or brought here on purpose: it stays when another book is opened. */
  readonly isOwn: boolean;
}

/** What is shown of a kept book in the list, without opening it. */
export interface BookCover {
  readonly title: string;
  readonly casting: string;
  readonly cells: number;
  /** Its first section, for a small drawing; null when it has none. */
  readonly section: Section | null;
}

export function coverOf({ title, casting, cells }: Book): BookCover {
  const section = cells.find((cell) => cell.kind === 'section');
  return { title, casting, cells: cells.length, section: section?.section ?? null };
}

/** Floor and roof of a section as paths in a box of that size, y down; null when it has no extent. */
export function outlineIn(
  { floor, roof, mouth }: Section,
  width: number,
  height: number,
): { readonly floor: string; readonly roof: string; readonly mouth: number } | null {
  const points = [...floor, ...roof];
  const [left, right] = [Math.min(...points.map(({ x }) => x)), Math.max(...points.map(({ x }) => x))];
  const [low, high] = [Math.min(...points.map(({ y }) => y)), Math.max(...points.map(({ y }) => y))];
  const scale = Math.min(width / (right - left), height / (high - low));
  if (!Number.isFinite(scale) || scale <= 0) return null;
  const inset = { x: (width - (right - left) * scale) / 2, y: (height - (high - low) * scale) / 2 };
  const xOf = (x: number) => inset.x + (x - left) * scale;
  const path = (line: Section['floor']): string =>
    line
      .map(({ x, y }, index) => {
        const down = height - inset.y - (y - low) * scale;
        return `${index === 0 ? 'M' : 'L'}${xOf(x).toFixed(1)} ${down.toFixed(1)}`;
      })
      .join('');
  return { floor: path(floor), roof: path(roof), mouth: xOf(mouth) };
}
