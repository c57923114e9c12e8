import type * as v from 'valibot';
import type { Issue } from '$src/core/issue';
import { beginningOf, capital } from '$src/report/wording';

/** A refusal of the schema in words: which field of which cell, what it holds, what it should hold. */
export function refusalOf(issue: v.BaseIssue<unknown>, book: unknown): Issue {
  const keys = (issue.path ?? []).map(({ key }) => String(key));
  const path = ['book', ...keys].join('.');
  const where = cellName(keys, book);
  const inCell = where === null ? '' : `In “${where}”: `;
  const { message, remedy } = wording(issue);
  return { path, message: inCell === '' ? capital(message) : inCell + message, remedy };
}

/** What to do about a field that no book has. */
export const STRAY_FIELD = 'Take it out, or check its spelling.';

function wording(issue: v.BaseIssue<unknown>): { message: string; remedy: string } {
  if (issue.expected === 'never') {
    return { message: 'this field does not belong here.', remedy: STRAY_FIELD };
  }
  const expected = expectedInWords(issue);
  if (issue.type === 'max_length') {
    const { requirement } = issue as { requirement?: unknown };
    return {
      message: `found ${issue.received}, which is too many.`,
      remedy: `Give at most ${requirement} of them.`,
    };
  }
  if (issue.received === 'undefined' && issue.type === 'strict_object')
    return { message: 'a field is missing.', remedy: `Put in the field ${issue.expected}.` };
  if (issue.received === 'undefined') return { message: 'a field is missing.', remedy: `Give ${expected}.` };
  return { message: `found ${foundInWords(issue)} in place of ${expected}.`, remedy: `Give ${expected}.` };
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text in quotes',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  strict_object: 'an object',
  min_length: 'text that is not empty',
  finite: 'a number that can be used',
};

function expectedInWords({ type, expected }: v.BaseIssue<unknown>): string {
  if (type === 'variant' || type === 'picklist' || type === 'literal') {
    return `one of ${(expected ?? '').replace(/^\(|\)$/g, '').replaceAll(' | ', ', ')}`;
  }
  return KINDS[type] ?? 'another value';
}

function foundInWords({ received }: v.BaseIssue<unknown>): string {
  if (received === 'Object') return 'an object';
  if (received === 'Array') return 'a list';
  return beginningOf(received);
}

function cellName([cells, index]: readonly string[], book: unknown): string | null {
  if (cells !== 'cells' || index === undefined) return null;
  const cell = (book as { cells?: readonly unknown[] }).cells?.[Number(index)];
  if (typeof cell !== 'object' || cell === null || !('name' in cell)) return null;
  return typeof cell.name === 'string' ? beginningOf(cell.name) : null;
}
