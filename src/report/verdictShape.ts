import type { VerdictKind } from './verdict';

/** A part of a mark, in a square of 30 × 30: an SVG path, drawn as a line or filled. */
export interface MarkPart {
  readonly d: string;
  readonly isFull: boolean;
}

/** A verdict as a shape, and two that only points of a study have: what is sound but for its feeder, and what folds and laps. */
export type MarkKind = VerdictKind | 'feeder short' | 'folds film and laps';

const line = (d: string): MarkPart => ({ d, isFull: false });
const full = (d: string): MarkPart => ({ d, isFull: true });

const RING = line('M3 15A12 12 0 1 0 27 15A12 12 0 1 0 3 15Z');
const STRUCK = [RING, line('M8 15H22')];

const SHAPES: Partial<Readonly<Record<MarkKind, readonly MarkPart[]>>> = {
  sound: [RING, line('M9 15.5L13.4 20L21.4 10.6')],
  'feeder short': [RING],
  'near the limit': [line('M15 2.5L27.5 15L15 27.5L2.5 15Z'), full('M15 2.5V27.5L2.5 15Z')],
  'folds film': [full('M15 1.5L28.5 15L15 28.5L1.5 15Z')],
  'folds film and laps': [full('M15 4L26 15L15 26L4 15Z'), line('M2 2H28V28H2Z')],
  laps: [full('M4 4H26V26H4Z')],
  misrun: [line('M4 4H26V26H4Z'), full('M4 15H26V26H4Z')],
  'not filled': [RING, full('M3 15A12 12 0 0 0 27 15Z')],
  'gas held': [RING, full('M3 15A12 12 0 0 0 27 15Z')],
  spills: [line('M15 3L28 26.5H2Z'), line('M15 11V18.5M15 21V23.4')],
};

/**
 * Ring and tick sound, ring alone sound but for the feeder, half-filled diamond near a limit, filled diamond folds film, in
 * a square where it laps too, filled square laps, half a square misruns, half a ring not filled, barred triangle spills
 * metal, struck ring not judged and the rest.
 */
export const verdictShape = (kind: MarkKind): readonly MarkPart[] => SHAPES[kind] ?? STRUCK;
