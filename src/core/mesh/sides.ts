import type { Point, Section } from '$src/core/section/section';

/** Places closer than this are one [m]. */
export const SAME_PLACE = 1e-9;

/** Height of a polyline just right (side 1) or just left (side −1) of x; steps take the value of their side. */
export function heightBeside(line: readonly Point[], x: number, side: 1 | -1): number {
  const last = line.length - 1;
  if (side === 1) {
    let k = 0;
    while (k < last - 1 && line[k + 1]!.x <= x + SAME_PLACE) k++;
    return interpolate(line[k]!, line[k + 1]!, x);
  }
  let k = last;
  while (k > 1 && line[k - 1]!.x >= x - SAME_PLACE) k--;
  return interpolate(line[k - 1]!, line[k]!, x);
}

function interpolate(a: Point, b: Point, x: number): number {
  const length = b.x - a.x;
  if (length <= SAME_PLACE) return b.y;
  return a.y + ((b.y - a.y) * (x - a.x)) / length;
}

/** 1 for each mesh cell under an opening of the roof; `x` are the faces [m]. */
export function openCells(section: Section, x: Float64Array): Uint8Array {
  const open = new Uint8Array(x.length - 1);
  for (const opening of section.openings) {
    if (opening.wall !== 'roof') continue;
    const from = section.roof[opening.from]!.x;
    const to = section.roof[opening.to]!.x;
    for (let i = 0; i < open.length; i++) {
      const centre = (x[i]! + x[i + 1]!) / 2;
      if (centre > from && centre < to) open[i] = 1;
    }
  }
  return open;
}

/** Floor and roof of each mesh cell at its left and right end [m]. */
export interface Sides {
  readonly floorLeft: Float64Array;
  readonly floorRight: Float64Array;
  readonly roofLeft: Float64Array;
  readonly roofRight: Float64Array;
}

/** Two-sided, so that vertical steps sit on faces; under an opening the roof is virtual. */
export function twoSidedLines(section: Section, x: Float64Array, open: Uint8Array): Sides {
  const cells = x.length - 1;
  const sides = {
    floorLeft: new Float64Array(cells),
    floorRight: new Float64Array(cells),
    roofLeft: new Float64Array(cells),
    roofRight: new Float64Array(cells),
  };
  const sky = virtualRoof(section);
  for (let i = 0; i < cells; i++) {
    sides.floorLeft[i] = heightBeside(section.floor, x[i]!, 1);
    sides.floorRight[i] = heightBeside(section.floor, x[i + 1]!, -1);
    sides.roofLeft[i] = open[i] ? sky : heightBeside(section.roof, x[i]!, 1);
    sides.roofRight[i] = open[i] ? sky : heightBeside(section.roof, x[i + 1]!, -1);
  }
  return sides;
}

/**
 * Height of the virtual roof over an opening. A level that stays under the lower rim never rises above the higher
 * one; the quarter on top is room for sloshing.
 */
export function virtualRoof(section: Section): number {
  const heights = [...section.floor, ...section.roof].map((point) => point.y);
  const highest = Math.max(...heights);
  return highest + (highest - Math.min(...heights)) / 4;
}
