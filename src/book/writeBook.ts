import type { Book } from '$src/cells/kinds';
import { BOOK_VERSION } from './migrations';
import { BOOK_FORMAT } from './readBook';

/** Lines shorter than this hold a whole small object, e.g. a point. */
const LINE = 100;

/** Fields in the order people read them; a field not named here comes after these, in alphabetical order. */
const FIELD_ORDER = [
  ...['format', 'version', 'book', 'title', 'casting', 'units', 'cells'],
  ...['kind', 'id', 'name', 'folded', 'text', 'by', 'wall', 'from', 'to', 'x', 'y'],
  ...['section', 'metal', 'charge', 'tilt', 'computation', 'pours', 'stepBy', 'drawnWith'],
  ...['floor', 'roof', 'openings', 'regions', 'mouth', 'cavities', 'pivot', 'vents', 'end', 'width'],
  'widthAtEnd',
  ...[
    'base',
    'density',
    'viscosity',
    'surfaceTension',
    'contactAngle',
    'pouringTemperature',
    'value',
    'confidence',
    'source',
  ],
  ...['start', 'stages', 'rate', 'time', 'smoothing', 'limits'],
];
const RANK = new Map(FIELD_ORDER.map((field, index) => [field, index]));

/**
 * The text of a `*.pourbook.json` file. The same book always gives the same text, and `readBook` gives the same book
 * back to the last digit. Throws when a number is not finite: JSON could not hold it and the file would not open again.
 */
export function writeBook(book: Book): string {
  return `${laidOut({ format: BOOK_FORMAT, version: BOOK_VERSION, book }, '')}\n`;
}

function laidOut(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return scalar(value);
  const inner = `${indent}  `;
  const isList = Array.isArray(value);
  const parts = isList
    ? value.map((part) => laidOut(part, inner))
    : ordered(value).map(([field, part]) => `${JSON.stringify(field)}: ${laidOut(part, inner)}`);
  const [open, close] = isList ? '[]' : '{}';
  const space = isList || parts.length === 0 ? '' : ' ';
  const line = `${open}${space}${parts.join(', ')}${space}${close}`;
  if (line.length + indent.length <= LINE && !line.includes('\n')) return line;
  return `${open}\n${parts.map((part) => inner + part).join(',\n')}\n${indent}${close}`;
}

function ordered(value: object): [string, unknown][] {
  const rank = (field: string) => RANK.get(field) ?? FIELD_ORDER.length;
  return Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
}

function scalar(value: unknown): string {
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Error(`A book holds ${value}, expected a number.`);
  // JSON has a negative nought, but JSON.stringify drops its sign.
  return Object.is(value, -0) ? '-0' : JSON.stringify(value);
}
