import type { Box } from '$src/report/drawing/box';
import type { Plot, Spot } from './chart';
import { type LabelPlaced, type LabelWanted, placeDirectLabels } from './directLabels';
import { isUnderReading, type Reading, readingBox, toldReadings } from './readings';

/** Where names may stand: the plot, and what they must keep off [px]. */
export interface LabelField {
  readonly plot: Plot;
  readonly taken: readonly Box[];
  readonly lines: readonly (readonly Spot[])[];
}

/**
 * Names beside a cursor at `at` [px]: one that a reading would be written over, or that the cursor's line strikes through,
 * makes way, the others keep their places. One that finds no other place is left out while a reading stands there; struck
 * through it stays.
 */
export function labelsAtCursor(
  labels: readonly LabelPlaced[],
  wanted: readonly LabelWanted[],
  { plot, taken, lines }: LabelField,
  at: number,
  readings: readonly Reading[],
): readonly LabelPlaced[] {
  const isUnder = (label: LabelPlaced): boolean => isUnderReading(label, at, readings, plot);
  const isStruck = ({ box }: LabelPlaced): boolean => box.left <= at && at <= box.right;
  const isCovered = (label: LabelPlaced): boolean => isUnder(label) || isStruck(label);
  const kept = labels.filter((label) => !isCovered(label));
  if (kept.length === labels.length) return labels;
  const keys = new Set(kept.map(({ key }) => key));
  const cursor: Spot[] = [
    [at, plot.top],
    [at, plot.bottom],
  ];
  const moved = placeDirectLabels(
    wanted.filter(({ key }) => !keys.has(key)),
    plot,
    [
      ...taken,
      ...kept.map(({ box }) => box),
      ...toldReadings(readings).map(({ py }) => readingBox(at, py, plot)),
    ],
    [...lines, ...wanted.filter(({ key }) => keys.has(key)).map(({ points }) => points), cursor],
  );
  const cleared = moved.filter((label) => !isCovered(label));
  const stay = labels.filter(
    (label) => isCovered(label) && !isUnder(label) && !cleared.some(({ key }) => key === label.key),
  );
  return [...kept, ...cleared, ...stay];
}
