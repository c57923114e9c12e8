/** Signs of a name at a line, at most. */
const MOST = 14;

const wordsOf = (name: string): string[] => name.split(/\s+/).filter((word) => word !== '');

/** How many words all names begin with; of each name one word is left. */
function sharedStart(names: readonly (readonly string[])[]): number {
  const most = Math.min(...names.map((words) => words.length)) - 1;
  let shared = 0;
  while (shared < most && names.every((words) => words[shared] === names[0]![shared])) shared++;
  return shared;
}

const cut = (name: string): string => (name.length > MOST ? `${name.slice(0, MOST - 1).trimEnd()}…` : name);

/**
 * Names short enough to stand at their lines, no two the same: without the words that all begin or end with, cut where
 * they are long still. Null where names so short cannot be told apart.
 */
export function shortNames(names: readonly string[]): readonly string[] | null {
  if (names.length === 0) return [];
  const whole = names.map(wordsOf);
  const start = sharedStart(whole);
  const rest = whole.map((words) => words.slice(start));
  const end = sharedStart(rest.map((words) => words.toReversed()));
  const short = rest.map((words) => cut(words.slice(0, words.length - end).join(' ')));
  return new Set(short).size === names.length ? short : null;
}
