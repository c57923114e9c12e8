import { lineAt } from './lineAt';
import type { Section } from './section';

/**
 * Length along the floor from the mouth to x [m], vertical steps included; negative in the basin.
 * At a step the place is its side towards the mouth's far end: the foot and the head of the step count at x itself.
 */
export function floorPathFromMouth(section: Section, x: number): number {
  const from = Math.min(section.mouth, x);
  const to = Math.max(section.mouth, x);
  const start = { x: from, y: lineAt(section.floor, from, 'right') };
  const end = { x: to, y: lineAt(section.floor, to, 'left') };
  const inside = section.floor.filter((point) => point.x > from && point.x < to);
  const places = [start, ...inside, end];
  let length = 0;
  for (let i = 1; i < places.length; i++) {
    length += Math.hypot(places[i]!.x - places[i - 1]!.x, places[i]!.y - places[i - 1]!.y);
  }
  return x < section.mouth ? -length : length;
}
