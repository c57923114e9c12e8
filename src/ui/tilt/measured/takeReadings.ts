import { guessText, type Reading, readRows } from '$src/core/tilt/measured/readRows';
import { repeatsOf } from '$src/core/tilt/measured/repeats';
import { smoothingFor } from '$src/core/tilt/measured/smoothingFor';
import {
  looksReversed,
  PLAIN_TREATMENT,
  type Treated,
  type Treatment,
  treatReadings,
} from '$src/core/tilt/measured/treatReadings';
import type { KnotTilt, RepeatBand } from '$src/core/tilt/tilt';
import { toDegrees } from '$src/core/units';
import { fixed } from '$src/report/wording';

/** Readings of one file, with what was made of it. */
export interface ReadFile {
  readonly name: string;
  readonly rows: readonly Reading[];
  readonly guess: string;
  /** Rows left out, each named by its line. */
  readonly wrongRows: readonly string[];
}

export async function readFile(file: File): Promise<ReadFile | { readonly refusals: readonly string[] }> {
  const result = readRows(await file.text());
  const told = ({ message, remedy }: { message: string; remedy: string }) =>
    `${file.name}: ${message} ${remedy}`;
  if ('issues' in result) return { refusals: result.issues.map(told) };
  return {
    name: file.name,
    rows: result.rows,
    guess: guessText(result.guess, result.rows),
    wrongRows: result.wrongRows.map(told),
  };
}

/** What files are treated with until somebody says otherwise: one smoothing for all, enough for the noisiest. */
export function firstTreatment(files: readonly ReadFile[]): Treatment {
  const smoothing = Math.max(...files.map(({ rows }) => smoothingFor(rows)));
  return { ...PLAIN_TREATMENT, reversed: looksReversed(files[0]!.rows), smoothing };
}

/** The same for an instrument that counts from elsewhere, so that the tilt starts higher by so much [rad]. */
export const startingHigher = (treatment: Treatment, by: number): Treatment => ({
  ...treatment,
  zero: treatment.zero + (treatment.reversed ? by : -by),
});

/** A measured tilt turned as a whole: what its readings tell is how it moved, whatever they were counted from. */
export const shifted = (tilt: KnotTilt, by: number): KnotTilt => ({
  ...tilt,
  start: tilt.start + by,
  knots: tilt.knots.map((knot) => ({ ...knot, inclination: knot.inclination + by })),
});

/** The tilt of these files, all treated alike: the typical repeat, and the band of all when there are several. */
export function takeReadings(tilt: KnotTilt, files: readonly ReadFile[], treatment: Treatment): KnotTilt {
  const { band: _, ...rest } = tilt;
  const { typical, index, band } = repeatsOf(files.map(({ rows }) => treatReadings(rows, treatment)));
  const file = files[index]!;
  const among = files.length > 1 ? `, the middle one of ${files.length} repeats by its time` : '';
  const notes = typical.notes.map(({ message }) => ` ${message}`).join('');
  const origin = `${file.name}${among}. ${file.guess} ${scatterText(typical)}${notes}`;
  const { start, knots, readings } = typical;
  return { ...rest, start, knots, origin, readings, ...(band ? { band } : {}) };
}

/** Of a line that goes through each reading nothing is known of how they scatter, and 0 would be a lie. */
function scatterText({ noise, readings: { smoothedOver } }: Treated): string {
  const over = `${fixed(smoothedOver, 2)} s`;
  return noise === null
    ? `Scatter about the line not known: too few readings in ${over}.`
    : `Smoothed over ${over}, scatter about the line ${fixed(toDegrees(noise), 2)}°.`;
}

/** The band in words: "3 repeats: time ±0.12 s, …". */
export function bandText({ count, start, time, rate }: RepeatBand): string {
  return `${count} repeats differ, one standard deviation: start ${fixed(toDegrees(start), 2)}°, time ${fixed(time, 3)} s, rate ${fixed(toDegrees(rate), 2)} °/s.`;
}
