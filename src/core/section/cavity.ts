import { breakPoints } from './breakPoints';
import { closedRoof } from './closedRoof';
import { lineAt } from './lineAt';
import type { Section } from './section';
import { taperVolume } from './taperVolume';
import { widthAt } from './widthAt';

/** Metal that fills all cavities from the mouth to the die end [m³]. */
export function cavityVolume(section: Section): number {
  return sumPast(section, section.mouth, volumeBetween);
}

/** Area of the cavity in the section, from the mouth to the die end [m²]. */
export function cavityArea(section: Section): number {
  return sumPast(section, section.mouth, areaBetween);
}

/** Volume between floor and roof, basin and all cavities [m³]; over an open basin up to the line between the rims. */
export function wholeVolume(section: Section): number {
  return sumPast(section, Number.NEGATIVE_INFINITY, volumeBetween);
}

type OverStretch = (section: Section, from: number, to: number) => number;

/** Sum over the straight stretches past a place. */
function sumPast(section: Section, place: number, over: OverStretch): number {
  const marks = breakPoints(section).filter((x) => x >= place);
  let sum = 0;
  for (let i = 1; i < marks.length; i++) sum += over(section, marks[i - 1]!, marks[i]!);
  return sum;
}

function areaBetween(section: Section, from: number, to: number): number {
  return ((to - from) * (heightAt(section, from, 'right') + heightAt(section, to, 'left'))) / 2;
}

function volumeBetween(section: Section, from: number, to: number): number {
  const [left, right] = [heightAt(section, from, 'right'), heightAt(section, to, 'left')];
  const width = widthAt(section, from, 'right');
  const gain = widthAt(section, to, 'left') - width;
  return (width * (to - from) * (left + right)) / 2 + taperVolume(to - from, gain, left, right);
}

/** Distance from floor to roof at x [m], on one side of a step. */
export function heightAt(section: Section, x: number, side: 'left' | 'right'): number {
  return lineAt(closedRoof(section), x, side) - lineAt(section.floor, x, side);
}
