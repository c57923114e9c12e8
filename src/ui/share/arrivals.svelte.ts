import { replaceState } from '$app/navigation';
import { readBook } from '$src/book/readBook';
import { writeBook } from '$src/book/writeBook';
import { bench } from '../bench.svelte';
import { desk } from '../desk.svelte';
import { fetchPart } from '../fetchPart';
import { LINK_MARK } from './linkMark';

/** A book that a link brought and that waits for a word. */
export interface Offer {
  readonly title: string;
  readonly cells: number;
  readonly text: string;
}

const fetchLinks = () => fetchPart('What packs a book into a link', () => import('./bookLink'));

/** Books that come by links and go by them. */
class Arrivals {
  offer: Offer | null = $state.raw(null);

  /** Looks whether the page was opened by a link that carries a book; the book is offered, never just opened. */
  async look(): Promise<void> {
    if (!location.hash.startsWith(LINK_MARK)) return;
    const links = await fetchLinks();
    if (!links) return;
    const read = await links.readLink(location.hash);
    replaceState(location.pathname + location.search, {});
    const result = 'text' in read ? readBook(read.text) : { issues: [read.issue] };
    if ('issues' in result) {
      const remedy = 'The book that was open is still here.';
      desk.notice = { message: 'The book in the link could not be opened.', remedy, issues: result.issues };
    } else if ('text' in read) {
      const { title, cells } = result.book;
      this.offer = { title, cells: cells.length, text: read.text };
    }
  }

  async accept(): Promise<void> {
    const { offer } = this;
    this.offer = null;
    if (offer) await desk.openBookText(offer.text, 'The book in the link', true);
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
      this.copied = `Link copied, ${address.length} characters. It holds the whole book, and opens where Quietpour runs at ${location.host}. Somebody who runs it at another address puts all from # on behind that one; everybody else is served by the page that plays.`;
    } catch {
      location.hash = fragment;
      this.copied = 'The link stands in the address line: copy it from there.';
    }
  }

  /** Said beside the button for as long as the page lives, or until the next link. */
  copied: string = $state('');
}

export const arrivals = new Arrivals();
