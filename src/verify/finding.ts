/** One graded figure of a check: what was looked at, what is right, what came out, and the bar it is held to. */
export interface Finding {
  readonly what: string;
  /** The exact or published value; null where the bar itself is the expectation. */
  readonly expected: number | null;
  readonly found: number;
  /** SI, written as people write it: 'm/s', '' for a ratio. */
  readonly unit: string;
  /** The figure passes while low ≤ found ≤ high. A report that is no gate has −Infinity and Infinity. */
  readonly low: number;
  readonly high: number;
  /** The bar in words. */
  readonly bar: string;
  /** Why a bar is what it is, or what cannot be met and why. */
  readonly note?: string;
}

export const holds = (finding: Finding): boolean =>
  finding.low <= finding.found && finding.found <= finding.high;

export const isReport = (finding: Finding): boolean => finding.low === -Infinity && finding.high === Infinity;

/** The size of something that should be nothing, or a relative error: no more than `most`. */
export function atMost(what: string, found: number, most: number, unit = '', note?: string): Finding {
  return withNote({ what, expected: null, found, unit, low: 0, high: most, bar: `≤ ${short(most)}` }, note);
}

export function atLeast(what: string, found: number, least: number, unit = '', note?: string): Finding {
  return withNote(
    { what, expected: null, found, unit, low: least, high: Number.MAX_VALUE, bar: `≥ ${short(least)}` },
    note,
  );
}

/** Within `share` of the expected value. */
export function near(
  what: string,
  expected: number,
  found: number,
  share: number,
  unit = '',
  note?: string,
): Finding {
  const room = Math.abs(expected) * share;
  return withNote(
    {
      what,
      expected,
      found,
      unit,
      low: expected - room,
      high: expected + room,
      bar: `± ${short(100 * share)} %`,
    },
    note,
  );
}

/** Within `room` of the expected value, in its own unit. */
export function nearBy(
  what: string,
  expected: number,
  found: number,
  room: number,
  unit: string,
  note?: string,
): Finding {
  return withNote(
    {
      what,
      expected,
      found,
      unit,
      low: expected - room,
      high: expected + room,
      bar: `± ${short(room)} ${unit}`,
    },
    note,
  );
}

/** A bar that cannot be met: said openly with its cause, and held to `most` so that it gets no worse. */
export function missed(
  what: string,
  found: number,
  wanted: number,
  most: number,
  unit: string,
  cause: string,
): Finding {
  return {
    what,
    expected: null,
    found,
    unit,
    low: 0,
    high: most,
    bar: `≤ ${short(wanted)} not met, held to ≤ ${short(most)}`,
    note: cause,
  };
}

/** A figure that is told, not judged. */
export function reported(
  what: string,
  expected: number | null,
  found: number,
  unit = '',
  note?: string,
): Finding {
  return withNote({ what, expected, found, unit, low: -Infinity, high: Infinity, bar: 'report' }, note);
}

/** A figure at its usual length. */
export function short(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  return size >= 1e5 || size < 1e-3
    ? value.toExponential(2).replace(/\.?0+e/, 'e')
    : String(Number(value.toPrecision(4)));
}

function withNote(finding: Finding, note: string | undefined): Finding {
  return note === undefined ? finding : { ...finding, note };
}
