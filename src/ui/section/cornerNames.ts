import type { Issue } from '$src/core/issue';
import { pointName } from '$src/core/section/checkLine';
import type { Section } from '$src/core/section/section';
import { lipOf } from '$src/ui/drawing/names';
import type { Corner, LineName } from './outlineEdit';

/** F1, R3: letter of the line, number from the back wall. */
export const cornerCode = ({ line, index }: Corner): string => pointName(line, index);

/** Codes of the corners that issues of a section point at. */
export const wrongCorners = (issues: readonly Issue[]): ReadonlySet<string> =>
  new Set(
    issues.flatMap(({ path }) => {
      const found = /^(floor|roof)\.(\d+)/.exec(path);
      return found ? [cornerCode({ line: found[1] as LineName, index: Number(found[2]) })] : [];
    }),
  );

const NEAR = 1e-6;

/** What a corner is, in a founder's words. */
export function cornerName(section: Section, corner: Corner): string {
  return corner.line === 'floor' ? floorName(section, corner.index) : roofName(section, corner.index);
}

function floorName(section: Section, index: number): string {
  const p = section.floor[index]!;
  const lip = lipOf(section);
  if (index === 0) return 'basin, back';
  if (index === section.floor.length - 1) return 'die end, floor';
  if (lip && Math.abs(lip.x - p.x) < NEAR && Math.abs(lip.y - p.y) < NEAR)
    return atMouth(section, p.x) ? 'mouth, lip' : 'lip';
  if (atMouth(section, p.x)) return 'mouth, floor';
  return p.x < section.mouth ? 'basin floor' : `${regionAt(section, p.x)} floor`;
}

function roofName(section: Section, index: number): string {
  const p = section.roof[index]!;
  if (isRim(section, index)) return index === 0 ? 'back rim' : 'rim';
  if (index === section.roof.length - 1) return 'die end, roof';
  if (section.openings.some((o) => o.wall === 'roof' && o.from < index && index < o.to))
    return 'in the opening';
  if (index === 0) return 'basin, back';
  if (atMouth(section, p.x)) return 'mouth, roof';
  return p.x < section.mouth ? 'roof over the basin' : `${regionAt(section, p.x)} roof`;
}

const atMouth = (section: Section, x: number): boolean => Math.abs(x - section.mouth) < NEAR;

export function isRim(section: Section, index: number): boolean {
  return section.openings.some((o) => (o.wall === 'roof' ? o.from === index || o.to === index : index === 0));
}

function regionAt(section: Section, x: number): string {
  return section.regions.find((r) => x <= r.end + NEAR)?.name ?? 'die';
}
