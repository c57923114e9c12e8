/** The name by which a heading of a document can be linked to. */
export const headingName = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, '')
    .replace(/\s/g, '-');

/** The name by which a line of the glossary can be linked to, by the word it explains; the mark for words of ours is not part of it. */
export const entryName = (word: string): string => headingName(word.replace(/ ▪$/, ''));
