import type { Section, Vent } from '$src/core/section/section';
import { fromMillimetres, fromSquareMillimetres } from '$src/core/units';

const FROM_END = fromMillimetres(2);
const AREA = fromSquareMillimetres(10);

export const withVent = (section: Section, index: number, change: Partial<Vent>): Section => ({
  ...section,
  vents: section.vents.map((vent, i) => (i === index ? { ...vent, ...change } : vent)),
});

export const withoutVent = (section: Section, index: number): Section => ({
  ...section,
  vents: section.vents.filter((_, i) => i !== index),
});

/** A small vent by the die end, where gas is shut in last as a rule. */
export function withVentAdded(section: Section): Section {
  const end = section.floor.at(-1)!.x;
  const place = Math.max(section.mouth, end - FROM_END);
  return { ...section, vents: [...section.vents, { place, area: AREA, blocked: 0 }] };
}
