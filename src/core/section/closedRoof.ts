import type { Point, Section } from './section';

/** The roof with every opening bridged by a straight line from rim to rim. */
export function closedRoof(section: Section): readonly Point[] {
  const spans = section.openings.filter((opening) => opening.wall === 'roof');
  return section.roof.filter((_, i) => !spans.some((span) => i > span.from && i < span.to));
}
