import { readFileSync } from 'node:fs';
import { inProject } from '../../../src/setup/paths.js';

/** Mesh cells of pours and studies in tests: the same page and solver, a coarser picture. */
const COARSE = 60;

/** The same book, the text of its file, on a coarse mesh. */
export function coarseBook(text: string): string {
  const file = JSON.parse(text) as { book: { cells: Record<string, unknown>[] } };
  const cells = file.book.cells.map((cell) => ({
    ...cell,
    ...('computation' in cell ? { computation: { ...Object(cell['computation']), meshCells: COARSE } } : {}),
    ...('study' in cell ? { study: { ...Object(cell['study']), meshCells: COARSE } } : {}),
  }));
  return JSON.stringify({ ...file, book: { ...file.book, cells } });
}

/** The book that a first visit begins with, on a coarse mesh. */
export function coarseFirstExample(): string {
  const [first] = JSON.parse(readFileSync(inProject('static/books.json'), 'utf8')) as { file: string }[];
  return coarseBook(readFileSync(inProject(`static/${first!.file}`), 'utf8'));
}
