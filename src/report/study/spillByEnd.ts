import { heldAtEnd } from '$src/core/level/heldAtEnd';
import type { PourRecord } from '$src/core/pour/record';
import { endOf } from '$src/core/tilt/endOf';
import { SPILL_BY_LEVEL, spilledWords } from '../spilledReason';

/** Metal that has left over a rim by the end of the stroke. */
export interface Spill {
  /** [m³] */
  readonly volume: number;
  /** What left after the die was full is taken from the level fill; a pour may lose less. */
  readonly isByLevel: boolean;
}

/** Left before its body had turned to the end. */
export const isCutShort = ({ plan: { tilt, computation }, series }: PourRecord): boolean =>
  computation.endsWhenDecided === true && series.inclination.at(-1)! > endOf(tilt);

/**
 * What a pour has spilled by the end of its stroke. A pour of a map ends with the full die: from there on its calm metal
 * follows the body, and what it still loses is what the level fill loses, which takes milliseconds. Null where that
 * cannot be told: metal that went stiff before the die was full lies as no level fill does.
 */
export function spillByEnd(record: PourRecord): Spill | null {
  const { plan, outcome, figures } = record;
  const { section, volume, tilt } = plan;
  const end = endOf(tilt);
  if (!isCutShort(record)) return { volume: figures.spilled, isByLevel: false };
  if (outcome.kind !== 'filled and quiet') return null;
  const still = heldAtEnd(section, volume - figures.spilled, tilt.start, end).spilled;
  return { volume: figures.spilled + still, isByLevel: true };
}

/** "Spills 53 cm³ over a rim."; empty where nothing does, or where that is not told. */
export function spillWords(spill: Spill | null): string {
  const words = spill && spilledWords({ figures: { spilled: spill.volume } });
  if (!spill || words === null) return '';
  return `Spills ${words} over a rim${spill.isByLevel ? ` ${SPILL_BY_LEVEL}` : '.'}`;
}
