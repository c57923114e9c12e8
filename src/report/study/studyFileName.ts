import { fileNameFrom } from '../fileName';
import type { StudyHead } from './studyFile';

/** File systems take names of 255 bytes, less what a browser or a batch puts before and behind [letters]. */
const LONGEST = 120;

/** What the files of a study are called, without their ending: after book and study, and what it is. The same from the page and the command line. */
export function studyFileName({ book, cell, axes }: Pick<StudyHead, 'book' | 'cell' | 'axes'>): string {
  const kind = axes.length > 1 ? 'map' : 'curve';
  const named = fileNameFrom(`${book} ${cell}`).slice(0, LONGEST).replace(/-+$/, '');
  return `${named}-${kind}`;
}
