import { LARGEST_FILE, readBook, unreadable } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { bench } from './bench.svelte';
import { type Example, exampleText, fetchAhead, fetchExamples } from './exampleBooks';
import { chooseFile, downloadText, fileNameOf } from './files';
import { endWait, keepLater } from './keepTimer';
import {
  cannotFetch,
  type Notice,
  OPEN_ELSEWHERE,
  refusedToKeep,
  STILL_HERE,
  tooLarge,
  tooMuch,
} from './notices';
import { bodies } from './page/bodies.svelte';
import { keepPast, pastOf } from './pasts';
import { savedFile } from './savedFile.svelte';
import { holdBook, lastOpen, noteOpen } from './shelf/bookHold';
import { makeTurns } from './shelf/inTurn';
import { keptTitles } from './shelf/keptTitles';
import { lastKept } from './shelf/lastKept';
import { newTitle } from './shelf/newTitle';
import { bookOf, dropBook, putBook } from './storage';
import { endStudies } from './study/shownStudies.svelte';

/** Where the book is kept at present. */
export type Kept =
  | { readonly kind: 'on this machine'; readonly at: Date }
  | { readonly kind: 'not yet' }
  | { readonly kind: 'refused' };

/** A character takes up to four bytes in a file. */
const BYTES_A_CHARACTER = 4;

/** Books in and out: kept in the browser, opened and saved as files, fetched as examples. */
class Desk {
  examples: readonly Example[] = $state.raw([]);
  notice: Notice | null = $state.raw(null);
  kept: Kept = $state.raw({ kind: 'not yet' });
  /** Names the open book among those kept here. */
  bookId = $state('');
  /** False until the first book lies on the desk. */
  isReady = $state(false);

  /** Opening and keeping wait for each other: a book must never be kept under the name of another. */
  readonly #inTurn = makeTurns();
  #lastText = '';
  /** As it was opened; a book that still is so is not kept once another is opened. */
  #textAtOpening = '';
  #isOwn = false;
  /** A book that the user opened while the first one was still on its way stays open. */
  #isChosen = false;

  /**
   * Brings back the book kept last; on a first visit, or where that one is an example as it came, opens what `openBrought`
   * has to open instead, so that nothing of the example is computed for somebody who came for another book. It answers
   * whether it opened one. Else opens the first example.
   */
  async start(openBrought: (() => Promise<boolean>) | null = null): Promise<void> {
    const examples = fetchExamples();
    // At a first visit there is nothing to bring back, and the first example comes while the store is asked.
    if (lastOpen() === null && !openBrought) void examples.then(([first]) => first && fetchAhead(first.file));
    const isOpen = await this.#openFirst(openBrought);
    this.examples = await examples;
    if (!isOpen) await this.#openFirstExample();
    await this.#inTurn(() => this.#beginUnkept());
    this.isReady = true;
  }

  /**
   * Where nothing could be opened, an empty book lies open. It is not kept before something is put into it: else the next
   * visit would bring it back in place of the example that did not come.
   */
  async #beginUnkept(): Promise<void> {
    if (this.isReady) return;
    this.bookId = crypto.randomUUID();
    await holdBook(this.bookId);
    this.#lastText = writeBook(bench.book);
    this.#textAtOpening = this.#lastText;
  }

  /** An example that was only looked at is there again at any time: a book that somebody came for takes its place at once. */
  async #openFirst(openBrought: (() => Promise<boolean>) | null): Promise<boolean> {
    if (openBrought && (await this.#inTurn(() => this.#isLastUntouched())) && (await openBrought()))
      return true;
    if (await this.#inTurn(() => this.#restore())) return true;
    return openBrought !== null && (await openBrought());
  }

  /** Whether the book kept last is an example as it came; it then gives way when another is opened. */
  async #isLastUntouched(): Promise<boolean> {
    try {
      const [id, last] = await lastKept();
      if (!last || last.isOwn) return false;
      this.bookId = id;
      return true;
    } catch {
      return false;
    }
  }

  /** Call whenever the book changes. */
  keepSoon(): void {
    keepLater(() => this.keepNow(), bench.sketches.isHeld);
  }

  /** Keeps the book that lies open. */
  keepNow(): Promise<void> {
    endWait();
    return this.#inTurn(() => this.#keep());
  }

  async #keep(): Promise<void> {
    const text = writeBook(bench.book);
    if (text === this.#lastText) return;
    this.#isOwn ||= this.#textAtOpening !== '' && text !== this.#textAtOpening;
    if (this.#textAtOpening === '') this.#textAtOpening = text;
    const issues = unreadable(bench.book, text);
    if (issues.length > 0) {
      this.kept = { kind: 'refused' };
      this.notice = tooMuch(issues);
      return;
    }
    const savedAt = new Date();
    try {
      await putBook(this.bookId, { text, savedAt, isOwn: this.#isOwn });
      // What was said of a book that could not be kept holds no longer.
      if (this.kept.kind === 'refused') this.notice = null;
      this.kept = { kind: 'on this machine', at: savedAt };
      this.#lastText = text;
    } catch (error) {
      this.kept = { kind: 'refused' };
      this.notice = refusedToKeep(error);
    }
  }

  /** Lets the user choose a book file, or a page that holds one, and opens it. */
  async openFile(): Promise<void> {
    await this.takeFile(await chooseFile('.json,.html,application/json,text/html'));
  }

  /** Opens a file that was chosen or dropped. One too large to be a book is refused before it is read. */
  async takeFile(file: File): Promise<void> {
    const isTooLarge = file.size > LARGEST_FILE * BYTES_A_CHARACTER;
    if (isTooLarge) this.notice = tooLarge(file);
    else await this.openBookText(await file.text(), file.name, true);
  }

  /**
   * Begins a book with nothing in it, in the units of the one that lies open, which stays kept when it was changed. Its
   * title is one that no other book here has.
   */
  beginBook(): Promise<void> {
    return this.#inTurn(async () => {
      if (this.isReady) await this.#keep();
      const title = newTitle([bench.book.title, ...(await keptTitles())]);
      const empty = { title, casting: '', units: bench.units, cells: [] };
      await this.#openBookText(writeBook(empty), 'A new book', true);
    });
  }

  /** Opens one of the books kept on this machine. */
  openKept(id: string): Promise<void> {
    return this.#inTurn(() => this.#openKept(id));
  }

  async #openKept(id: string): Promise<void> {
    await this.#keep();
    const kept = await bookOf(id);
    if (!kept || !this.openText(kept.text, 'The book kept in this browser', id)) return;
    await this.#leave();
    await this.#take(id, kept.isOwn);
    this.#settleOn(kept.text, kept.savedAt);
  }

  /** A copy of the open book under a name of its own; the copy lies open afterwards. */
  keepAsCopy(): Promise<void> {
    return this.#inTurn(() => this.#keepAsCopy());
  }

  async #keepAsCopy(): Promise<void> {
    await this.#keep();
    keepPast(this.bookId, bench.history);
    await this.#take(crypto.randomUUID(), true);
    bench.change('Kept as a copy', (book) => ({ ...book, title: `${book.title}, copy` }));
  }

  /** Opens the text of a book file as a new book beside those kept; the book that was open stays kept when it was changed. */
  openBookText(text: string, from: string, isOwn: boolean): Promise<boolean> {
    return this.#inTurn(() => this.#openBookText(text, from, isOwn));
  }

  async #openBookText(text: string, from: string, isOwn: boolean): Promise<boolean> {
    if (this.isReady) await this.#keep();
    if (!this.openText(text, from)) return false;
    this.#isChosen = true;
    await this.#leave();
    await this.#take(crypto.randomUUID(), isOwn);
    this.#lastText = '';
    this.#textAtOpening = writeBook(bench.book);
    await this.#keep();
    return true;
  }

  /** A book that was only looked at is not kept. */
  async #leave(): Promise<void> {
    if (this.bookId === '' || this.#isOwn) return;
    await dropBook(this.bookId).catch(() => undefined);
  }

  /** Takes a book in hand; when another tab has it, what is changed here goes into a copy. */
  async #take(id: string, isOwn: boolean): Promise<void> {
    const isFree = await holdBook(id);
    this.bookId = isFree ? id : crypto.randomUUID();
    if (!isFree) {
      await holdBook(this.bookId);
      this.notice = OPEN_ELSEWHERE;
    }
    this.#isOwn = isFree && isOwn;
    noteOpen(this.bookId);
  }

  #settleOn(text: string, savedAt: Date): void {
    this.#lastText = text;
    this.#textAtOpening = text;
    this.kept = { kind: 'on this machine', at: savedAt };
  }

  /** Opens the text of a book file; when it cannot be read, says why and leaves the present book alone. `id` is that of a kept one. */
  openText(text: string, from: string, id = ''): boolean {
    const result = readBook(text);
    if ('issues' in result) {
      const message = `${from} could not be opened.`;
      this.notice = { message, remedy: STILL_HERE, issues: result.issues };
      return false;
    }
    this.notice = null;
    // What was said of another book's file.
    savedFile.forget();
    bodies.begin();
    endStudies([]);
    keepPast(this.bookId, bench.history);
    bench.open(result.book, pastOf(id, text));
    // It is shown before it is kept: what is kept may take its time.
    this.isReady = true;
    bench.announcement = `${result.book.title} opened.`;
    // Another book is read from its start, not from where the last one was left.
    if (typeof scrollTo === 'function') scrollTo(0, 0);
    return true;
  }

  /** Saves the open book as a file, and says under which name for a while. */
  saveFile(): void {
    const name = fileNameOf(bench.book.title);
    downloadText(writeBook(bench.book), name);
    savedFile.say(name);
  }

  /** Opens an example; one that nobody asked for gives way to a book that was chosen meanwhile. */
  async openExample(example: Example, isAskedFor = true): Promise<void> {
    try {
      const text = await exampleText(example.file);
      await this.#inTurn(async () => {
        if (isAskedFor || !this.#isChosen) await this.#openBookText(text, example.title, false);
      });
    } catch (error) {
      this.notice = cannotFetch(example.title, error);
    }
  }

  async #restore(): Promise<boolean> {
    try {
      const [id, last] = await lastKept();
      if (this.#isChosen) return true;
      if (!last || !this.openText(last.text, 'The book kept in this browser')) return false;
      await this.#take(id, last.isOwn);
      this.#settleOn(this.bookId === id ? last.text : '', last.savedAt);
      return true;
    } catch (error) {
      this.kept = { kind: 'refused' };
      this.notice = refusedToKeep(error);
      return false;
    }
  }

  async #openFirstExample(): Promise<void> {
    const [first] = this.examples;
    if (this.#isChosen) return;
    if (first) await this.openExample(first, false);
    else this.notice ??= cannotFetch('The example books', null);
  }
}

export const desk = new Desk();
