import type { Margin } from './margins';
import type { Region } from './region';
import { regionWords } from './regionWords';
import { type SoundRange, soundRanges } from './soundRanges';
import type { NamedAxis } from './studyFile';

/** What one study has found of the pour it varies, as both stand now. */
export interface FoundByStudy {
  readonly axes: readonly NamedAxis[];
  readonly margins: readonly Margin[] | null;
  /** Where the pour as it is set lies; null when that was not looked at. */
  readonly setRegion: Region | null;
  /** How far repeats stray on each axis, either way; absent or 0 where that is not known. */
  readonly spreads?: readonly number[];
}

/** How far the settings of a pour may stray: ranges, or why there are none. */
export interface SoundFinding {
  readonly ranges: readonly SoundRange[];
  /** Empty where there are ranges. */
  readonly without: string;
}

export const NO_STUDY: SoundFinding = { ranges: [], without: 'no study of this pour' };

/**
 * @param count studies of the pour there are in the book, whether they have been run or not
 * @param isOld one of them was run, and what it varies has been changed since
 */
export function soundFinding(count: number, found: readonly FoundByStudy[], isOld = false): SoundFinding {
  const ranges = found.flatMap(({ axes, margins, spreads }) => soundRanges(axes, margins, spreads));
  if (ranges.length > 0) return { ranges, without: '' };
  if (count === 0) return NO_STUDY;
  const region = found.find(({ setRegion }) => setRegion !== null)?.setRegion;
  if (region === undefined || region === null)
    return { ranges, without: isOld ? 'its study is out of date' : 'its study was not run' };
  return {
    ranges,
    without: region === 'sound' ? 'not found by its study' : `none: ${regionWords(region)} as set`,
  };
}
