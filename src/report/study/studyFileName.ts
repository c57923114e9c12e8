import { fileNameFrom, LONGEST_NAME } from '../fileName';
import type { StudyHead } from './studyFile';

/** What the files of a study are called, without their ending: after book and study, and what it is. The same from the page and the command line. */
export function studyFileName({ book, cell, axes }: Pick<StudyHead, 'book' | 'cell' | 'axes'>): string {
  const kind = axes.length > 1 ? 'map' : 'curve';
  const named = fileNameFrom(`${book} ${cell}`).slice(0, LONGEST_NAME).replace(/-+$/, '');
  return `${named}-${kind}`;
}
