import type { Issue } from '$src/core/issue';
import type { Opening, Section } from './section';

/** Openings must name two points of the roof, in order, and may not overlap; the back wall opens once. */
export function checkOpenings(section: Section): Issue[] {
  const { openings, roof } = section;
  return openings.flatMap((opening, i) => {
    const name = openings.length > 1 ? `Opening ${i + 1}` : 'The opening';
    const own = opening.wall === 'roof' ? checkSpan(opening, roof.length, i, name) : [];
    const earlier = openings.slice(0, i).findIndex((other) => overlap(other, opening));
    if (own.length > 0 || earlier < 0) return own;
    const message = `${name} lies over opening ${earlier + 1}.`;
    return [{ path: `openings.${i}`, message, remedy: 'Take one of the two out, or shorten it.' }];
  });
}

type RoofOpening = Extract<Opening, { wall: 'roof' }>;

function checkSpan({ from, to }: RoofOpening, count: number, index: number, name: string): Issue[] {
  const isPoint = (place: number) => Number.isInteger(place) && place >= 0 && place < count;
  const wrong = (['from', 'to'] as const).filter((end) => !isPoint({ from, to }[end]));
  if (wrong.length > 0) {
    return wrong.map((end) => ({
      path: `openings.${index}.${end}`,
      message: `${name} has a rim that is no point of the roof.`,
      remedy: `Choose one of R1 to R${count}.`,
    }));
  }
  if (from < to) return [];
  return [
    {
      path: `openings.${index}.to`,
      message: `${name} ends at R${to + 1}, not after R${from + 1} where it begins.`,
      remedy: 'Choose a later point for its second rim, or swap the two.',
    },
  ];
}

function overlap(a: Opening, b: Opening): boolean {
  if (a.wall === 'roof' && b.wall === 'roof') return a.from < b.to && b.from < a.to;
  return a.wall === b.wall;
}
