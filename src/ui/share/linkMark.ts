/** How the fragment of a link that carries a book begins. */
export const LINK_MARK = '#book=';
