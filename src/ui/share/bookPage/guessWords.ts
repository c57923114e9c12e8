/** What becomes of the guesses of a book in its saved page: said where it is saved. */
export const GUESSES_IN_PAGE =
  'Nobody can guess in the saved page: it asks, and shows what the pour did after a press.';
