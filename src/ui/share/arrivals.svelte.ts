import { replaceState } from '$app/navigation';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import type { Issue } from '$src/core/issue';
import { bench } from '../bench.svelte';
import { desk } from '../desk.svelte';
import { fetchPart } from '../fetchPart';
import { STILL_HERE } from '../notices';
import { LINK_MARK } from './linkMark';

/** A book that a link brought and that waits for a word. */
export interface Offer {
  readonly title: string;
  readonly cells: number;
  readonly text: string;
}

const fetchLinks = () => fetchPart('What packs a book into a link', () => import('./bookLink'));

/** The book in the link of the page, or what is wrong with it; null when what unpacks it cannot be fetched. */
async function readBrought(): Promise<Offer | { readonly issues: readonly Issue[] } | null> {
  const links = await fetchLinks();
  if (!links) return null;
  const read = await links.readLink(location.hash);
  if (!('text' in read)) return { issues: [read.issue] };
  const result = readBook(read.text);
  if ('issues' in result) return result;
  const { title, cells } = result.book;
  return { title, cells: cells.length, text: read.text };
}

/** Books that come by links and go by them. */
class Arrivals {
  offer: Offer | null = $state.raw(null);

  /** What opens the book of the link that the page was opened by, for a first visit; null when there is no such link. */
  get opener(): (() => Promise<boolean>) | null {
    return location.hash.startsWith(LINK_MARK) ? () => this.#openBrought() : null;
  }

  /** Nothing of the user's is open that could be asked about. One that cannot be read is left to `look`, which tells why. */
  async #openBrought(): Promise<boolean> {
    const brought = await readBrought();
    this.#isOpened = brought !== null && 'text' in brought && (await this.#open(brought));
    return this.#isOpened;
  }
  #isOpened = false;

  /**
   * Looks whether a link that carries a book stands in the address line, as when the page was opened by it or it was put there
   * later; beside an open book it is offered, never just opened.
   */
  async look(): Promise<void> {
    if (!location.hash.startsWith(LINK_MARK)) return;
    const isOpened = this.#isOpened;
    this.#isOpened = false;
    const brought = isOpened ? null : await readBrought();
    if (!brought && !isOpened) return;
    replaceState(location.pathname + location.search, {});
    if (!brought) return;
    if ('text' in brought) this.offer = brought;
    else {
      const message = 'The book in the link could not be opened.';
      desk.notice = { message, remedy: STILL_HERE, issues: brought.issues };
    }
  }

  async accept(): Promise<void> {
    const { offer } = this;
    this.offer = null;
    if (offer) await this.#open(offer);
  }

  #open({ text }: Offer): Promise<boolean> {
    return desk.openBookText(text, 'The book in the link', true);
  }

  decline(): void {
    this.offer = null;
  }

  /** Puts a link to the open book on the clipboard, or says why there is none. */
  async copyLink(): Promise<void> {
    const links = await fetchLinks();
    if (!links) return;
    const fragment = await links.linkOf(writeBook(bench.book));
    if (fragment === null) {
      const remedy = 'Save it as a file, or take long notes, pictures and cells out.';
      desk.notice = { message: 'The book is too large for a link.', remedy, issues: [] };
      return;
    }
    const address = location.href.replace(/#.*$/, '') + fragment;
    try {
      await navigator.clipboard.writeText(address);
      bench.announcement = 'Link copied. It holds the whole book; nothing is stored elsewhere.';
      this.#say(
        `Link copied, ${address.length} characters. It holds the whole book, and opens where Quietpour runs at ${location.host}. Somebody who runs it elsewhere adds everything from the # on to their own address. For anybody without Quietpour, use “Save as a page that plays”.`,
      );
    } catch {
      // Put there quietly: it brings no book, it takes one away.
      replaceState(fragment, {});
      this.#say('The link stands in the address line: copy it from there.');
    }
  }

  #say(words: string): void {
    this.#said = { of: bench.opened, words };
  }
  #said = $state.raw({ of: 0, words: '' });

  /** Said beside the button until the next link, or until another book lies open. */
  get copied(): string {
    return this.#said.of === bench.opened ? this.#said.words : '';
  }
}

export const arrivals = new Arrivals();
