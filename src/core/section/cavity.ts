import { breakPoints } from './breakPoints';
import { closedRoof } from './closedRoof';
import { lineAt } from './lineAt';
import type { Section } from './section';
import { widthAt } from './widthAt';

/** Metal that fills all cavities from the mouth to the die end [m³]. */
export function cavityVolume(section: Section): number {
  return sumPastMouth(section, (from) => widthAt(section, from, 'right'));
}

/** Area of the cavity in the section, from the mouth to the die end [m²]. */
export function cavityArea(section: Section): number {
  return sumPastMouth(section, () => 1);
}

function sumPastMouth(section: Section, weightAt: (from: number) => number): number {
  const marks = breakPoints(section).filter((x) => x >= section.mouth);
  let sum = 0;
  for (let i = 1; i < marks.length; i++) {
    const from = marks[i - 1]!;
    const to = marks[i]!;
    const heights = heightAt(section, from, 'right') + heightAt(section, to, 'left');
    sum += (weightAt(from) * (to - from) * heights) / 2;
  }
  return sum;
}

/** Distance from floor to roof at x [m], on one side of a step. */
export function heightAt(section: Section, x: number, side: 'left' | 'right'): number {
  return lineAt(closedRoof(section), x, side) - lineAt(section.floor, x, side);
}
