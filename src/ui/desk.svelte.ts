import { base } from '$app/paths';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import type { Book } from '$src/cells/kinds';
import type { Issue } from '$src/core/issue';
import { bench } from './bench.svelte';
import { chooseFile, downloadText, fileNameOf } from './files';
import { keepBook, keptBook } from './storage';

/** An example book on the server. */
export interface Example {
  readonly file: string;
  readonly title: string;
  /** Heading it is listed under; absent = none. */
  readonly group?: string;
}

/** Something the user must know about their book, with what to do. */
export interface Notice {
  readonly message: string;
  readonly remedy: string;
  readonly issues: readonly Issue[];
}

/** Where the book is kept at present. */
export type Kept =
  | { readonly kind: 'on this machine'; readonly at: Date }
  | { readonly kind: 'not yet' }
  | { readonly kind: 'refused' };

/** Changes wait this long before they are kept [ms]. */
const PAUSE = 600;

/** Books in and out: kept in the browser, opened and saved as files, fetched as examples. */
class Desk {
  examples: readonly Example[] = $state.raw([]);
  notice: Notice | null = $state.raw(null);
  kept: Kept = $state.raw({ kind: 'not yet' });
  /** False until the first book lies on the desk. */
  isReady = $state(false);

  #timer: ReturnType<typeof setTimeout> | undefined;
  #lastText = '';
  /** A book that the user opened while the first one was still on its way stays open. */
  #isChosen = false;

  /** Brings back the book kept last; on a first visit opens the first example. */
  async start(): Promise<void> {
    const examples = this.#fetchExamples();
    const restored = await this.#restore();
    this.examples = await examples;
    if (!restored) await this.#openFirstExample();
    this.isReady = true;
  }

  /** Call whenever the book changes. */
  keepSoon(book: Book): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.keepNow(book), PAUSE);
  }

  async keepNow(book: Book): Promise<void> {
    clearTimeout(this.#timer);
    const text = writeBook(book);
    if (text === this.#lastText) return;
    try {
      this.kept = { kind: 'on this machine', at: await keepBook(text) };
      this.#lastText = text;
    } catch (error) {
      this.kept = { kind: 'refused' };
      this.notice = refusedToKeep(error);
    }
  }

  /** Lets the user choose a book file and opens it. */
  async openFile(): Promise<void> {
    const file = await chooseFile('.json,application/json');
    if (file && this.openText(await file.text(), file.name)) this.#isChosen = true;
  }

  /** Opens the text of a book file; when it cannot be read, says why and leaves the present book alone. */
  openText(text: string, from: string): boolean {
    const result = readBook(text);
    if ('issues' in result) {
      const remedy = 'The book that was open is still here.';
      this.notice = { message: `${from} could not be opened.`, remedy, issues: result.issues };
      return false;
    }
    this.notice = null;
    bench.open(result.book);
    bench.announcement = `${result.book.title} opened.`;
    return true;
  }

  saveFile(): void {
    downloadText(writeBook(bench.book), fileNameOf(bench.book.title));
  }

  /** Opens an example; one that nobody asked for asks first whether it is still wanted. */
  async openExample(example: Example, isWanted: () => boolean = () => true): Promise<void> {
    try {
      const text = await fetchText(example.file);
      if (isWanted()) this.openText(text, example.title);
    } catch (error) {
      this.notice = cannotFetch(example.title, error);
    }
  }

  async #restore(): Promise<boolean> {
    try {
      const last = await keptBook();
      if (this.#isChosen) return true;
      if (!last || !this.openText(last.text, 'The book kept in this browser')) return false;
      this.#lastText = last.text;
      this.kept = { kind: 'on this machine', at: last.savedAt };
      return true;
    } catch (error) {
      this.kept = { kind: 'refused' };
      this.notice = refusedToKeep(error);
      return false;
    }
  }

  async #fetchExamples(): Promise<readonly Example[]> {
    try {
      return JSON.parse(await fetchText('books.json')) as Example[];
    } catch {
      return [];
    }
  }

  async #openFirstExample(): Promise<void> {
    const [first] = this.examples;
    if (this.#isChosen) return;
    if (first) await this.openExample(first, () => !this.#isChosen);
    else this.notice ??= cannotFetch('The example books', null);
  }
}

async function fetchText(path: string): Promise<string> {
  const answer = await fetch(`${base}/${path}`);
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return answer.text();
}

function cannotFetch(what: string, error: unknown): Notice {
  const reason = error instanceof Error ? ` (${error.message})` : '';
  const remedy = 'Add cells below, or open a book file of your own.';
  return { message: `${what} could not be fetched${reason}.`, remedy, issues: [] };
}

function refusedToKeep(error: unknown): Notice {
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  const message = isFull
    ? 'This browser has no room left to keep the book.'
    : 'This browser refuses to keep the book between visits.';
  const remedy = 'Nothing is lost while this page is open. Save the book as a file before you close it.';
  return { message, remedy, issues: [] };
}

export const desk = new Desk();
