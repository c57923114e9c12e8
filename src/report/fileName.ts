/** A name any file system takes: letters, digits, hyphens. */
export function fileNameFrom(name: string): string {
  return (
    name
      .normalize('NFKD')
      .replaceAll(/[^\w]+/g, '-')
      .replaceAll(/^-+|-+$/g, '')
      .toLowerCase() || 'quietpour'
  );
}

/** File systems take names of 255 bytes, less what a browser or a batch puts before and behind [letters]. */
export const LONGEST_NAME = 120;

/** The name of a file that comes out of a book: after the book, unless it is named so already. */
export function nameInBook(book: string, name: string): string {
  const [before, own] = [fileNameFrom(book), fileNameFrom(name)];
  const named = own.startsWith(before) ? own : `${before}-${own}`;
  if (named.length <= LONGEST_NAME) return named;
  // What tells two charts of one book apart stands last.
  const room = Math.max(0, LONGEST_NAME - own.length - 1);
  return (own.startsWith(before) ? own : `${before.slice(0, room)}-${own}`)
    .slice(-LONGEST_NAME)
    .replace(/^-+/, '');
}
