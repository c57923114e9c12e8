import type { Issue } from '$src/core/issue';
import type { Section } from '$src/core/section/section';

const REGION = /^regions\.(\d+)\.(end|width|widthAtEnd|transfer|dieTemperature)$/;
const POINT = /^(floor|roof)\.(\d+)\.[xy]$/;
const OTHERS = /^(cavities|mouth|pivot\.[xy]|vents\.\d+\.(place|area|blocked))$/;

/** Whether the tables of a section have a field for what an issue is about: it is told there. */
function hasField({ floor, roof, regions }: Section, path: string): boolean {
  const point = POINT.exec(path);
  if (point) return Number(point[2]) < { floor, roof }[point[1] as 'floor' | 'roof'].length;
  const region = REGION.exec(path);
  if (!region) return OTHERS.test(path);
  // The last region ends where the die does, and has no field for it.
  return region[2] !== 'end' || Number(region[1]) < regions.length - 1;
}

/** Paths of the fields that tell their own issue. */
export const wrongFields = (section: Section, issues: readonly Issue[]): string[] =>
  issues.map(({ path }) => path).filter((path) => hasField(section, path));
