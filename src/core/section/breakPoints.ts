import { SAME_PLACE } from './lineAt';
import type { Section } from './section';

/** Every x where floor, roof or width changes its course, rising, each once [m]: between two of them all is straight. */
export function breakPoints(section: Section): number[] {
  const first = section.floor[0]!.x;
  const last = section.floor.at(-1)!.x;
  const marks = [...section.floor, ...section.roof].map((point) => point.x);
  marks.push(section.mouth, ...section.regions.map((region) => region.end));
  const inside = marks.filter((x) => x >= first && x <= last).sort((a, b) => a - b);
  return inside.filter((x, i) => i === 0 || x - inside[i - 1]! > SAME_PLACE);
}
