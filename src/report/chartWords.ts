import type { PourRecord } from '$src/core/pour/record';
import { LENGTH, type PageUnits, SPEED, toDegrees } from '$src/core/units';
import { inUnits } from './inUnits';
import { criticalRange } from './speedCall';
import {
  angleText,
  fixed,
  peakPlaceText,
  percentText,
  secondsText,
  signedDegrees,
  speedText,
} from './wording';

/** Degrees on an axis: signed, whole where they are whole. */
export const degreesMark = (degrees: number): string =>
  signedDegrees(degrees, Math.abs(degrees - Math.round(degrees)) < 0.05 ? 0 : 1);

/** Lengths on an axis, in the page's unit: whole millimetres, inches without needless noughts. */
export const lengthMark =
  ({ length }: PageUnits) =>
  (value: number): string =>
    length === 'mm' ? fixed(value, 0) : fixed(value, 2).replace(/\.?0+$/, '');
/** Speeds on an axis, in the page's unit. */
export const speedMark =
  ({ length }: PageUnits) =>
  (speed: number): string =>
    fixed(speed, length === 'mm' ? 2 : 0);
export const speedTitle = ({ length }: PageUnits): string => `front speed, ${SPEED[length].unit}`;
export const secondMark = (time: number): string =>
  fixed(
    time,
    Math.abs(time - Math.round(time)) < 1e-6 ? 0 : Math.abs(time * 10 - Math.round(time * 10)) < 1e-6 ? 1 : 2,
  );

/** Front speeds are drawn to at least this, so that the forbidden field is in view even for a sound pour; then step by step [the page's unit]. */
const SPEED_IN_VIEW = { mm: 1, in: 40 } as const;
const SPEED_STEP = { mm: 0.2, in: 5 } as const;

/** Common speed axis of some pours in the page's unit: from 0 to 1 m/s or 40 in/s, or to the next step above the quickest. */
export function speedDomain(records: readonly PourRecord[], units: PageUnits): [number, number] {
  const quickest = Math.max(0, ...records.flatMap(({ frontSpeeds }) => Array.from(frontSpeeds.speed)));
  return [0, Math.max(SPEED_IN_VIEW[units.length], speedAbove(SPEED[units.length].toShown(quickest), units))];
}

/** Room over the critical line for its words, and steps for an axis that is fitted [share; the page's unit]. */
const OVER_CRITICAL = 1.3;
const FITTED_STEP = { mm: 0.1, in: 5 } as const;

/** Speed axis of pours set side by side: no higher than the quickest of them and the highest of their limits, with its hatch, ask for. */
export function fittedSpeedDomain(records: readonly PourRecord[], units: PageUnits): [number, number] {
  const { toShown } = SPEED[units.length];
  const quickest = Math.max(0, ...records.flatMap(({ frontSpeeds }) => Array.from(frontSpeeds.speed)));
  const limit = Math.max(...records.map(({ plan }) => plan.liquid.criticalSpeed));
  const step = FITTED_STEP[units.length];
  const wanted = toShown(Math.max(quickest, OVER_CRITICAL * limit));
  return [0, Number((Math.ceil(wanted / step - 1e-9) * step).toPrecision(9))];
}

/** The next whole step of a speed axis at or above a speed [the page's unit]. */
export function speedAbove(speed: number, { length }: PageUnits): number {
  const step = SPEED_STEP[length];
  return Number((Math.ceil(speed / step - 1e-9) * step).toPrecision(9));
}

/** The critical line with its hatch and doubt, as the speed chart draws it in the page's unit. */
export function criticalBand(criticalSpeed: number, units: PageUnits, note = 'above it, skin folds in') {
  const { toShown } = SPEED[units.length];
  return {
    value: toShown(criticalSpeed),
    from: toShown(criticalRange(criticalSpeed).from),
    label: inUnits(`critical ${speedText(criticalSpeed)}`, units),
    note,
  };
}

/**
 * The place axis of front speeds: each is the mean over the way just behind the front and is drawn at the middle of it,
 * so it stands half of that behind where the front is. Windows of several dies that differ are not told in figures.
 */
export function speedPlaceLabel(records: readonly PourRecord[], units: PageUnits): string {
  const windows = new Set(
    records.map(({ frontSpeeds }) => lengthMark(units)(LENGTH[units.length].toShown(frontSpeeds.window))),
  );
  const stretch = windows.size === 1 ? `last ${[...windows][0]} ${units.length}` : 'last stretch';
  return `${units.length} from the mouth, middle of the ${stretch} run`;
}

/** The speed chart of one pour in words. */
export function speedSentence(record: PourRecord): string {
  const { peakFrontSpeed, peakFrontSpeedPlace, shareAboveCritical } = record.figures;
  if (peakFrontSpeed === null) return 'No front ran in the die.';
  const at = peakPlaceText(peakFrontSpeedPlace);
  const over = shareAboveCritical
    ? `, above critical on ${percentText(shareAboveCritical)} of the die`
    : ', below critical throughout';
  return `Front speed peaks at ${speedText(peakFrontSpeed)}${at}${shareAboveCritical === null ? '' : over}.`;
}

/** The front-place chart of one pour in words. */
export function placeSentence(record: PourRecord, levelEnd: number | null): string {
  const { arrivalTime } = record.figures;
  if (record.figures.stoodAtEnd) return 'The front stands at the end of the die before the tilt begins.';
  if (arrivalTime === null) return 'The front does not reach the end of the die.';
  const index = Math.max(
    0,
    record.series.time.findIndex((time) => time >= arrivalTime),
  );
  const own = `The front reaches the end at ${angleText(record.series.inclination[index]!)}`;
  return levelEnd === null ? `${own}.` : `${own}; the level fill would at ${degreesMark(levelEnd)}.`;
}

/** Inclination and rate of one pour in words. */
export function tiltSentence(record: PourRecord): string {
  const { inclination, time } = record.series;
  const [start, end] = [toDegrees(inclination[0]!), toDegrees(inclination.at(-1)!)];
  return `The die turns from ${degreesMark(start)} to ${degreesMark(end)} within ${secondsText(time.at(-1)!)}.`;
}

/** Die length [m] as an axis domain in the page's unit; rounded, or an end at 199.99999999999997 loses its mark. */
export const placeDomain = (length: number, units: PageUnits): [number, number] => [
  0,
  Number(LENGTH[units.length].toShown(length).toPrecision(9)),
];
