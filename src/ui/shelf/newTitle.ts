const FIRST = 'New book';

/** The title of a book that is begun: "New book", numbered where a book here has that title. */
export function newTitle(taken: readonly string[]): string {
  const known = new Set(taken.map((title) => title.trim()));
  if (!known.has(FIRST)) return FIRST;
  let number = 2;
  while (known.has(`${FIRST} ${number}`)) number++;
  return `${FIRST} ${number}`;
}
