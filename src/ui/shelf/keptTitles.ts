import { readBook } from '$src/book/readBook';
import { allBooks } from '../storage';

/** Titles of the books kept on this machine; none where the browser lets none be read. */
export async function keptTitles(): Promise<string[]> {
  try {
    return [...(await allBooks()).values()].flatMap(({ text }) => {
      const result = readBook(text);
      return 'book' in result ? [result.book.title] : [];
    });
  } catch {
    return [];
  }
}
