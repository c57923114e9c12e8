import { LARGEST_FILE } from '$src/book/readBook';
import type { Issue } from '$src/core/issue';

/** Something the user must know about their book, with what to do. */
export interface Notice {
  readonly message: string;
  readonly remedy: string;
  readonly issues: readonly Issue[];
}

export const STILL_HERE = 'The book that was open is still here.';

export function tooLarge({ name, size }: File): Notice {
  const message = `${name} could not be opened: it has ${size} bytes, and a book has at most ${LARGEST_FILE} characters.`;
  return { message, remedy: STILL_HERE, issues: [] };
}

/** What was kept before stays kept, so that a book which would not open again never takes its place. */
export function tooMuch(issues: readonly Issue[]): Notice {
  return {
    message: 'This book has grown past what a book can hold, and is no longer kept.',
    remedy: 'Undo the last change, or move cells to another book. What was kept before is still there.',
    issues,
  };
}

export const OPEN_ELSEWHERE: Notice = {
  message: 'This book is open in another tab.',
  remedy:
    'What you change here is kept as a book of its own, so that neither tab overwrites the other. Both are in the list of books.',
  issues: [],
};

export function cannotFetch(what: string, error: unknown): Notice {
  const reason = error instanceof Error ? ` (${error.message})` : '';
  const remedy = 'Add cells below, or open a book file of your own.';
  return { message: `${what} could not be fetched${reason}.`, remedy, issues: [] };
}

/** `what`: the part of the program, as "The list of books". */
export const notFetched = (what: string): Notice => ({
  message: `${what} could not be fetched from the server.`,
  remedy: 'The open book is not affected. Try again when the server answers.',
  issues: [],
});

export function refusedToKeep(error: unknown): Notice {
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  const message = isFull
    ? 'This browser has no room left to keep the book.'
    : 'This browser refuses to keep the book between visits.';
  const remedy = 'Nothing is lost while this page is open. Save the book as a file before you close it.';
  return { message, remedy, issues: [] };
}
