import { readFile, stat } from 'node:fs/promises';
import { LARGEST_FILE, type ReadBook, readBook } from '$src/book/readBook';

/** Bytes; a character takes at most four. */
const LARGEST = 4 * LARGEST_FILE;

/** The book in a file, or what is wrong with it; a file that cannot be read is an issue like any other. */
export async function openBook(path: string): Promise<ReadBook> {
  try {
    const { size } = await stat(path);
    if (size > LARGEST) return refusal(`The file “${path}” is too large for a book.`);
    return readBook(await readFile(path, 'utf8'));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return refusal(`There is no file “${path}”.`);
    if (code === 'EISDIR') return refusal(`“${path}” is a folder, not a file.`);
    return refusal(`“${path}” cannot be read: ${error instanceof Error ? error.message : error}`);
  }
}

function refusal(message: string): ReadBook {
  return { issues: [{ path: '', message, remedy: 'Give the path of a *.pourbook.json file.' }] };
}
