import * as v from 'valibot';
import type { Book } from '$src/cells/kinds';
import type { Issue } from '$src/core/issue';
import { bookTextIn, isPage } from '$src/report/bookPage/bookInPage';
import { BOOK_VERSION, type BookFile, migrate } from './migrations';
import { refusalOf, STRAY_FIELD } from './refusal';
import { bookSchema } from './schema';

export const BOOK_FORMAT = 'pourbook';

/** Characters in a file; a large book with long notes is a hundredth of this. */
export const LARGEST_FILE = 5_000_000;
/** Brackets within brackets; a book has ten. */
const DEEPEST = 30;
/** More would not be read. */
const MOST_ISSUES = 20;

export type ReadBook = { readonly book: Book } | { readonly issues: readonly Issue[] };

/**
 * Reads the text of a `*.pourbook.json` file, or of a page saved from a book, which holds that file. Whatever the text, it
 * answers with a book or with what is wrong.
 */
export function readBook(text: string): ReadBook {
  const plain = text.replace(/^\uFEFF/, '');
  if (!isPage(plain)) return readFileText(plain);
  const held = bookTextIn(plain);
  return held === null ? { issues: [NO_BOOK_IN_PAGE] } : readFileText(held);
}

const WANTED = 'Open a file that ends in .pourbook.json, or a page saved from a book as one HTML file.';
const NO_BOOK_IN_PAGE: Issue = {
  path: '',
  message: 'The file is a web page that holds no book.',
  remedy: WANTED,
};

function readFileText(text: string): ReadBook {
  const size = sizeIssue(text);
  if (size) return { issues: [size] };
  const json = parsed(text);
  if ('issue' in json) return { issues: [json.issue] };
  const file = fileOf(json.value);
  if ('issue' in file) return { issues: [file.issue] };
  return checked(migrate(file).book);
}

function checked(book: unknown): ReadBook {
  const result = v.safeParse(bookSchema, book);
  if (!result.success)
    return { issues: result.issues.slice(0, MOST_ISSUES).map((issue) => refusalOf(issue, book)) };
  const issues = repeatedIds(result.output);
  return issues.length > 0 ? { issues } : { book: result.output };
}

/** Why a book, written as `text`, could not be read again: more cells, rows or characters than a file may have. */
export function unreadable(book: Book, text: string): readonly Issue[] {
  const size = sizeIssue(text);
  if (size) return [size];
  const result = checked(book);
  return 'issues' in result ? result.issues : [];
}

function sizeIssue(text: string): Issue | null {
  if (text.length > LARGEST_FILE) {
    return {
      path: '',
      message: `The file has ${text.length} characters; a book has at most ${LARGEST_FILE}.`,
      remedy: 'Check that it is the right file, or split the book.',
    };
  }
  if (depthOf(text) > DEEPEST) {
    return {
      path: '',
      message: 'The file is nested deeper than any book.',
      remedy: 'Check that it is the right file.',
    };
  }
  return null;
}

/** Greatest depth of brackets outside quoted text. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const character = text[i];
    if (quoted) {
      if (character === '\\') i++;
      else if (character === '"') quoted = false;
    } else if (character === '"') quoted = true;
    else if (character === '{' || character === '[') deepest = Math.max(deepest, ++depth);
    else if (character === '}' || character === ']') depth--;
  }
  return deepest;
}

function parsed(text: string): { readonly value: unknown } | { readonly issue: Issue } {
  try {
    return { value: JSON.parse(text) };
  } catch (error) {
    if (!text.trimStart().startsWith('{'))
      return { issue: { path: '', message: 'The file is not a book file.', remedy: WANTED } };
    const message = `The book file is cut short or damaged: ${error instanceof Error ? error.message : error}.`;
    return { issue: { path: '', message, remedy: 'Open another copy of it, or mend the place named.' } };
  }
}

const envelope = v.looseObject({ format: v.literal(BOOK_FORMAT), version: v.unknown(), book: v.unknown() });

function fileOf(value: unknown): BookFile | { readonly issue: Issue } {
  const file = v.safeParse(envelope, value);
  if (!file.success) {
    const message = `The file does not hold a book: its format is not “${BOOK_FORMAT}”, or it has no version or book.`;
    return { issue: { path: 'format', message, remedy: 'Open a file that ends in .pourbook.json.' } };
  }
  const { version } = file.output;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    const remedy = `Give the version the file was saved with; this program writes ${BOOK_VERSION}.`;
    return { issue: { path: 'version', message: 'The version is not a whole number from 1 up.', remedy } };
  }
  if (version > BOOK_VERSION) {
    const message = `This book was saved by a newer Quietpour: it is version ${version}, and this one reads up to version ${BOOK_VERSION}.`;
    const remedy = 'Open it with the newer program. Nothing in the file has been changed.';
    return { issue: { path: 'version', message, remedy } };
  }
  // Asked of the file itself: names such as “constructor” are left out of what has been checked.
  const stray = Object.keys(value as object).find((key) => !Object.hasOwn(envelope.entries, key));
  if (stray === undefined) return { ...file.output, version };
  const message = 'This field does not belong in a book file.';
  return { issue: { path: stray, message, remedy: STRAY_FIELD } };
}

function repeatedIds({ cells }: Book): Issue[] {
  const first = new Map(cells.map((cell, index) => [cell.id, index] as const).reverse());
  return cells.flatMap((cell, index) =>
    first.get(cell.id) === index
      ? []
      : [
          {
            path: `book.cells.${index}.id`,
            message: `“${cell.name}” has the same id as “${cells[first.get(cell.id)!]!.name}”.`,
            remedy: 'Give every cell an id of its own.',
          },
        ],
  );
}
