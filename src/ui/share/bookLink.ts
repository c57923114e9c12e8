import { LARGEST_FILE } from '$src/book/readBook';
import type { Issue } from '$src/core/issue';
import { LINK_MARK } from './linkMark';

/** Characters in a fragment; longer ones are cut by mail programs and chats. */
export const LONGEST_LINK = 16_000;

/** The fragment that carries the text of a book file; null when the book is too large for a link. */
export async function linkOf(text: string): Promise<string | null> {
  const packed = await throughStream(new TextEncoder().encode(text), new CompressionStream('deflate-raw'));
  const fragment = LINK_MARK + inLetters(packed);
  return fragment.length > LONGEST_LINK ? null : fragment;
}

export type ReadLink = { readonly text: string } | { readonly issue: Issue };

/** The text a fragment carries. Whatever the fragment, it answers with a text of bounded size or with what is wrong. */
export async function readLink(fragment: string): Promise<ReadLink> {
  if (!fragment.startsWith(LINK_MARK) || fragment.length > LONGEST_LINK) return { issue: DAMAGED };
  try {
    const packed = fromLetters(fragment.slice(LINK_MARK.length));
    const bytes = await throughStream(packed, new DecompressionStream('deflate-raw'), LARGEST_FILE);
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { issue: DAMAGED };
  }
}

const DAMAGED: Issue = {
  path: '',
  message: 'The link does not carry a whole book; it may have been cut on its way.',
  remedy: 'Ask for the link again, or for the book as a file.',
};

/** All that comes out of a stream. @throws RangeError when it is more than `most` bytes: a small link may unpack to gigabytes. */
async function throughStream(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number = Number.POSITIVE_INFINITY,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    size += piece.value.length;
    if (size > most) {
      await reader.cancel();
      throw new RangeError(`got more than ${most} bytes`);
    }
    pieces.push(new Uint8Array(piece.value));
  }
  return new Uint8Array(await new Blob(pieces).arrayBuffer());
}

/** Bytes in letters that need no escape in an address. */
function inLetters(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function fromLetters(letters: string): Uint8Array<ArrayBuffer> {
  const text = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
