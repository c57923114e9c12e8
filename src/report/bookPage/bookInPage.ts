const LEAD = 'href="data:application/json;charset=utf-8,';

/** The link that a saved page carries its book file in, as an attribute. */
export const bookLinkOf = (bookText: string): string => `${LEAD}${encodeURIComponent(bookText)}"`;

/** Whether a text is a web page of any kind. */
export const isPage = (text: string): boolean => /^\s*<(?:!doctype html|html|!--)/i.test(text);

/** The text of the book file in a saved page; null when the page holds none. */
export function bookTextIn(page: string): string | null {
  // The last one is the page's own, in its foot: what stands before is written by others.
  const from = page.lastIndexOf(LEAD);
  if (from < 0) return null;
  const written = page.slice(from + LEAD.length).split('"', 1)[0]!;
  try {
    return decodeURIComponent(written);
  } catch {
    return null;
  }
}
