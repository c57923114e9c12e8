import type { Box } from '$src/report/drawing/box';
import type { Plot, Spot } from './chart';
import { textWidth } from './labelRoom';

/** Value of a curve at the cursor, and its height in the chart [px]. */
export interface Reading {
  readonly key: string;
  readonly value: number;
  readonly py: number;
}

/** Width of a reading, and least height between two [px]. */
const WIDTH = 36;
const APART = 13;
/** Nearer to the right edge than this, readings stand before the cursor [px]. */
const EDGE = 60;

export const isFlipped = (at: number, plot: Plot): boolean => at > plot.right - EDGE;

export const baselineOf = (py: number, plot: Plot): number => Math.max(plot.top + 9, py - 6);

/** Left edge and baseline of a reading beside the cursor. */
const readingAt = (at: number, py: number, plot: Plot): Spot => [
  isFlipped(at, plot) ? at - 44 : at + 8,
  baselineOf(py, plot),
];

export function readingBox(at: number, py: number, plot: Plot): Box {
  const [left, baseline] = readingAt(at, py, plot);
  return { left, right: left + WIDTH, top: baseline - 10, bottom: baseline + 3 };
}

/** Readings from the top down; one that would be written over the one before it is left to the dots. */
export function toldReadings(readings: readonly Reading[]): Reading[] {
  const told: Reading[] = [];
  for (const each of [...readings].sort((a, b) => a.py - b.py)) {
    if (each.py - (told.at(-1)?.py ?? Number.NEGATIVE_INFINITY) >= APART) told.push(each);
  }
  return told;
}

/** A label makes room for a reading that would be written over it. */
export function isUnderReading(
  label: { readonly text: string; readonly x: number; readonly y: number },
  at: number,
  readings: readonly Reading[],
  plot: Plot,
): boolean {
  const half = textWidth(label.text) / 2;
  return readings.some(({ py }) => {
    const [start, baseline] = readingAt(at, py, plot);
    return Math.abs(baseline - label.y) < APART && start < label.x + half && start + WIDTH > label.x - half;
  });
}
