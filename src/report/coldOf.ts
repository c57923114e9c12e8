import type { PourRecord } from '$src/core/pour/record';
import { gasHeld } from './gasHeld';
import { shortOfCavity } from './shortCharge';

export type Cold = 'none' | 'laps' | 'misrun';

/**
 * Whether cold spoilt a pour. Metal that goes stiff in a die which gas or missing metal left unfilled is no misrun,
 * and a place that never fills has not lapped: where the die stays unfilled, only a lap that was seen counts.
 */
export function coldOf(record: PourRecord): Cold {
  const { lap } = record.figures;
  if (lap === null || lap.kind === 'none') return 'none';
  if (record.figures.filledTime !== null) return lap.kind;
  if (lap.kind === 'misrun' && !isLeftUnfilled(record)) return 'misrun';
  return record.folds.some(({ kind }) => kind === 'lap') ? 'laps' : 'none';
}

/** Gas or missing metal, not cold, is what keeps the die from filling. */
function isLeftUnfilled(record: PourRecord): boolean {
  const { section, volume } = record.plan;
  if (shortOfCavity(section, volume - spilledBeforeRest(record)) > 0) return true;
  return gasHeld(record) && firstOfGasAndRest(record)?.first !== 'rest';
}

/** A front that gets no further than this has come to rest [m]. */
const AT_REST = 0.002;

/** The moment of the series from which the front gets no further; −1 when it never was there. */
function restIndex({ series }: PourRecord): number {
  const furthest = series.front.reduce((most, front) => Math.max(most, front), Number.NEGATIVE_INFINITY);
  return series.front.findIndex((front) => front >= furthest - AT_REST);
}

/** Metal over a rim while the front still ran [m³]; what a stiff front keeps out runs over afterwards. */
function spilledBeforeRest(record: PourRecord): number {
  const index = restIndex(record);
  return index < 0 ? 0 : record.series.spilled[index]!;
}

/**
 * When gas was shut in and when the front came to rest [s], and which came first; null when one of them did not. A front
 * at the die end has nowhere to go, and is not at rest.
 */
export interface GasAndRest {
  readonly gas: number;
  readonly rest: number;
  readonly first: 'gas' | 'rest';
}

export function firstOfGasAndRest(record: PourRecord): GasAndRest | null {
  const gas = record.folds.find(({ kind }) => kind === 'gas sealed in')?.time;
  const index = restIndex(record);
  if (gas === undefined || index < 0 || record.figures.arrivalTime !== null) return null;
  const rest = record.series.time[index]!;
  return { gas, rest, first: gas <= rest ? 'gas' : 'rest' };
}
