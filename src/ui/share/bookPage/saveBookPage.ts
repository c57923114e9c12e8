import { writeBook } from '$src/book/writeBook';
import { bookPage } from '$src/report/bookPage/bookPage';
import { REPLAY_SCRIPT } from '$src/report/bookPage/replayScript';
import { bench } from '../../bench.svelte';
import { downloadText, fileNameOf } from '../../files';
import { cellPart, type PageSource } from './cellPart';

/** Hands the open book to the user as one page that replays its pours as they stand. */
export async function saveBookPage(): Promise<void> {
  const { book } = bench;
  const source: PageSource = {
    book,
    evaluation: (cell) => bench.evaluation(cell.id),
    record: (cell) => {
      const run = bench.run(cell.id);
      return run.current ? run.record : null;
    },
  };
  const bookFileName = fileNameOf(book.title);
  const page = bookPage({
    title: book.title,
    casting: book.casting,
    parts: book.cells.map((cell, index) => cellPart(source, cell, index)),
    bookText: writeBook(book),
    bookFileName,
    scriptHash: await hashOf(REPLAY_SCRIPT),
  });
  downloadText(page, bookFileName.replace('.pourbook.json', '.html'), 'text/html');
}

async function hashOf(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return btoa(String.fromCharCode(...new Uint8Array(digest)));
}
