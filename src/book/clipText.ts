import type { Clip } from '$src/cells/clip';
import type { Issue } from '$src/core/issue';
import { BOOK_VERSION } from './migrations';
import { BOOK_FORMAT, LARGEST_FILE, readBook } from './readBook';
import { writeBook } from './writeBook';

/** The mark by which cells on the clipboard are known from any other text. */
export const CLIP_FORMAT = 'pourbook cells';

export const isClip = (text: string): boolean =>
  text.length <= LARGEST_FILE && text.slice(0, 200).includes(`"${CLIP_FORMAT}"`);

/** Cells as text for the clipboard: a book file of those cells, with a mark of its own. */
export function writeClip({ chosen, cells }: Clip): string {
  const { book } = JSON.parse(writeBook({ title: 'Cells', casting: '', cells })) as { book: unknown };
  return JSON.stringify({ format: CLIP_FORMAT, version: BOOK_VERSION, chosen, book });
}

/** Reads what `writeClip` wrote, as strictly as a book file: a clipboard may hold anything. */
export function readClip(text: string): { readonly clip: Clip } | { readonly issues: readonly Issue[] } {
  const mark = marked(text);
  if (!mark) return { issues: [NOT_CELLS] };
  const result = readBook(JSON.stringify({ format: BOOK_FORMAT, version: mark.version, book: mark.book }));
  if ('issues' in result) return result;
  const { cells } = result.book;
  const chosen = mark.chosen.filter((id) => cells.some((cell) => cell.id === id));
  return chosen.length === 0 ? { issues: [NOT_CELLS] } : { clip: { chosen, cells } };
}

const NOT_CELLS: Issue = {
  path: '',
  message: 'The clipboard holds no cells of a book.',
  remedy: 'Copy a cell first.',
};

interface Mark {
  readonly version: unknown;
  readonly chosen: readonly string[];
  readonly book: unknown;
}

function marked(text: string): Mark | null {
  if (!isClip(text)) return null;
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== 'object' || value === null || !('format' in value)) return null;
    const { format, version, chosen, book } = value as Record<string, unknown>;
    if (format !== CLIP_FORMAT || !Array.isArray(chosen)) return null;
    return { version, book, chosen: chosen.filter((id): id is string => typeof id === 'string') };
  } catch {
    return null;
  }
}
