import { lineAt } from '$src/core/section/lineAt';
import type { Point, Section } from '$src/core/section/section';
import { type Steel, splitAtMouth } from '$src/report/drawing/steel';

/** A part of the body that can be named on a picture, with the way out of the steel from it; die frame. */
export interface NamedPart {
  readonly key: string;
  readonly name: string;
  readonly at: Point;
  readonly away: Point;
}

/** The point metal behind the mouth must climb over: the highest floor point with lower floor behind it; null on a flush floor. */
export function lipOf(section: Section): Point | null {
  const { floor } = section;
  const end = section.mouth + 1e-9;
  let lip: Point | null = null;
  let lowest = floor[0]?.y ?? 0;
  for (const p of floor) {
    if (p.x > end) break;
    if (p.y > lowest + 1e-6 && (lip === null || p.y >= lip.y)) lip = p;
    lowest = Math.min(lowest, p.y);
  }
  return lip;
}

/** Names on the picture, the most needed first. */
export function namedParts(section: Section, steel: Steel): NamedPart[] {
  const parts: NamedPart[] = [];
  const lip = lipOf(section);
  const end = section.floor[section.floor.length - 1]!.x;
  const mouthTop = Math.max(
    lineAt(section.roof, section.mouth, 'right'),
    ...topOfBlockAt(steel, section.mouth),
  );
  const lipAtMouth = lip !== null && Math.abs(lip.x - section.mouth) < 1e-6;
  const mouthName = lipAtMouth ? 'mouth, lip' : 'mouth';
  parts.push({ key: 'mouth', name: mouthName, at: { x: section.mouth, y: mouthTop }, away: { x: 0, y: 1 } });
  parts.push({ key: 'basin', name: 'basin', at: belowBasin(section, steel), away: { x: -0.3, y: -1 } });
  const mid = section.mouth + (end - section.mouth) * 0.42;
  const bottom = Math.min(...steel.floorBlock.map((p) => p.y));
  parts.push({
    key: 'floor half',
    name: 'die, floor half',
    at: { x: mid, y: (lineAt(section.floor, mid, 'right') + bottom) / 2 },
    away: { x: -0.2, y: -1 },
  });
  const roofAt = section.mouth + (end - section.mouth) * 0.68;
  const top = topOfBlockAt(steel, roofAt)[0];
  if (top !== undefined) {
    const at = { x: roofAt, y: (lineAt(section.roof, roofAt, 'right') + top) / 2 };
    parts.push({ key: 'roof half', name: 'die, roof half', at, away: { x: 0.2, y: 1 } });
  }
  if (lip && !lipAtMouth) parts.push({ key: 'lip', name: 'lip', at: lip, away: { x: -0.5, y: 1 } });
  steel.rims.forEach((rim, i) => {
    const left = rim.x <= section.floor[0]!.x + 1e-9;
    parts.push({
      key: `rim ${i}`,
      name: left ? 'back rim' : 'rim',
      at: rim,
      away: { x: left ? -0.7 : -0.3, y: 1 },
    });
  });
  return parts;
}

function belowBasin(section: Section, steel: Steel): Point {
  const { basin } = splitAtMouth(section);
  const x = basin[0]!.x + (section.mouth - basin[0]!.x) * 0.3;
  return { x, y: lineAt(basin, x, 'right') - steel.shellThickness / 2 };
}

/** Top of the roof steel over x [m], nothing where the roof is open. */
function topOfBlockAt(steel: Steel, x: number): number[] {
  return steel.roofBlocks.flatMap((block) => {
    const xs = block.map((p) => p.x);
    return x >= Math.min(...xs) && x <= Math.max(...xs) ? [Math.max(...block.map((p) => p.y))] : [];
  });
}
