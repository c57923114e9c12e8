import fc from 'fast-check';

/** Values that a careless program, a hostile file or a slip of the hand puts where something else belongs. */
const NASTY: readonly unknown[] = [
  null,
  true,
  '',
  'NaN',
  '1e999',
  '__proto__',
  'constructor',
  '<img src=x onerror=alert(1)>',
  [],
  {},
  [[[[[[]]]]]],
  0,
  -0,
  -1,
  0.5,
  1e-300,
  1e-9,
  1e6,
  2 ** 53,
  -1e300,
  1.7e308,
  Array.from({ length: 3000 }, (_, index) => index),
  Array.from({ length: 600 }, () => ({ x: 0, y: 0 })),
  JSON.parse('{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}'),
];

/** Keys that reach into what all objects share, and one that is simply wrong. */
const KEYS = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'colour'];

type Holder = Record<string, unknown> | unknown[];

/** Every object and list within, outermost first. */
function holdersIn(value: unknown): Holder[] {
  if (typeof value !== 'object' || value === null) return [];
  return [value as Holder, ...Object.values(value).flatMap(holdersIn)];
}

const HOWS = ['drop', 'replace', 'scale', 'swap', 'repeat', 'add key', 'wrap'] as const;

export interface Mutation {
  /** Which holder and which of its keys: places, counted round as often as needed. */
  readonly holder: number;
  readonly key: number;
  readonly how: (typeof HOWS)[number];
  readonly nasty: number;
}

/** Evenly spread, so that the depths of a book are reached as often as its top. */
export const place: fc.Arbitrary<number> = fc.noBias(fc.nat({ max: 1_000_000 }));

export const mutation: fc.Arbitrary<Mutation> = fc.record({
  holder: place,
  key: place,
  how: fc.noBias(fc.constantFrom(...HOWS)),
  nasty: fc.noBias(fc.nat({ max: NASTY.length - 1 })),
});

/** Own property even where the key is `__proto__`, as in parsed JSON. */
const put = (holder: object, key: string, value: unknown): void => {
  // A copy: a value put into itself would be a thing that no file can hold.
  const copy: unknown = structuredClone(value);
  Object.defineProperty(holder, key, { value: copy, enumerable: true, configurable: true, writable: true });
};

/** Changes a value in place, as a parsed file; the value may be anything that JSON holds. */
export function mutate(value: unknown, { holder, key, how, nasty }: Mutation): void {
  const holders = holdersIn(value);
  const chosen = holders[holder % holders.length];
  if (!chosen) return;
  const keys = Object.keys(chosen);
  const at = keys[key % keys.length];
  if (how === 'add key') put(chosen, KEYS[nasty % KEYS.length]!, NASTY[nasty]);
  if (at === undefined) return;
  const record = chosen as Record<string, unknown>;
  const old = record[at];
  if (how === 'drop' && Array.isArray(chosen)) chosen.splice(Number(at), 1);
  else if (how === 'drop') delete record[at];
  else if (how === 'replace') put(record, at, NASTY[nasty]);
  else if (how === 'wrap') put(record, at, [old]);
  else if (how === 'scale' && typeof old === 'number')
    put(record, at, old * [-1, 0, 1e-6, 1e3, 1e12][nasty % 5]!);
  else if (how === 'swap') put(record, at, record[keys[nasty % keys.length]!]);
  else if (how === 'repeat' && Array.isArray(chosen))
    chosen.splice(Number(at), 0, ...Array.from({ length: 1 + nasty * 30 }, () => structuredClone(old)));
}

/** Pieces of text that are put in, or put in place of others. */
const PIECES = [
  '"',
  '{',
  '[',
  ']',
  '}',
  ',',
  ';',
  '-',
  '1e309',
  'NaN',
  '\u0000',
  '\uFEFF',
  '\ud800',
  '\n',
  '99999999999999999999',
  '<',
  '>',
  '&',
  '\\',
];

export interface Cut {
  /** Place in the text, in millionths. */
  readonly from: number;
  readonly length: number;
  readonly put: string;
  readonly times: number;
}

/** A stretch of text taken out and something put in its place. */
export const cut: fc.Arbitrary<Cut> = fc.record({
  from: place,
  length: fc.oneof(fc.constant(0), fc.nat({ max: 12 }), fc.nat({ max: 2000 })),
  put: fc.oneof(fc.constantFrom('', ...PIECES), fc.string({ unit: 'binary', maxLength: 6 })),
  times: fc.oneof(fc.constant(1), fc.constantFrom(3, 40, 5000)),
});

export function cutText(text: string, { from, length, put: piece, times }: Cut): string {
  const start = Math.floor((from / 1_000_000) * text.length);
  return text.slice(0, start) + piece.repeat(times) + text.slice(start + length);
}
