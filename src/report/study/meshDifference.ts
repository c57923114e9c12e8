import { secondsText, speedText } from '../wording';
import type { PointFigures } from './pointFigures';
import { resultWords } from './regionWords';

interface Told {
  readonly name: string;
  readonly text: (figures: PointFigures) => string | null;
}

const TOLD: readonly Told[] = [
  { name: '', text: (figures) => resultWords({ figures }) },
  {
    name: 'left before freezing',
    text: ({ lap }) => (lap === null || lap.margin === null ? null : secondsText(lap.margin)),
  },
  {
    name: 'peak speed',
    text: ({ peakFrontSpeed }) => (peakFrontSpeed === null ? null : speedText(peakFrontSpeed)),
  },
  { name: 'full at', text: ({ filledTime }) => (filledTime === null ? 'not full' : secondsText(filledTime)) },
];

/**
 * How the pour as it is set differs between the mesh of a study and its own: "left before freezing 8.34 s there, 1.00 s in
 * the pour". What reads the same is left out.
 */
export function meshDifference(there: PointFigures, inPour: PointFigures): string {
  const told = TOLD.flatMap(({ name, text }) => {
    const [one, other] = [text(there), text(inPour)];
    if (one === null || other === null || one === other) return [];
    return [`${name === '' ? '' : `${name} `}${one} there, ${other} in the pour`];
  });
  return told.length === 0 ? 'At the setting the two read the same.' : `At the setting: ${told.join('; ')}.`;
}
