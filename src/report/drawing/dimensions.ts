import { lineAt } from '$src/core/section/lineAt';
import type { Point, Section } from '$src/core/section/section';
import { roofStretches, type Steel } from './steel';

/** A measure on the drawing: `from` to `to` in the die frame [m]; its line lies `row` rows outside the body on a side, or in place. */
export interface Measure {
  readonly from: Point;
  readonly to: Point;
  readonly side: 'below' | 'above' | 'left' | 'inside';
  readonly row: number;
  /** [m] */
  readonly value: number;
  /** What it measures, for a reader who cannot see the drawing. */
  readonly name: string;
}

const SHORT_SHARE = 0.12;

/** The measures a section is drawn with: basin and die length, depth of the back wall, gaps, openings. */
export function measuresOf(section: Section, steel: Steel): Measure[] {
  const bottom = Math.min(...steel.corners.map((p) => p.y));
  const top = Math.max(...steel.corners.map((p) => p.y));
  const { floor, roof, mouth } = section;
  const start = floor[0]!;
  const end = floor[floor.length - 1]!;
  const along = (from: number, to: number, y: number, side: 'below' | 'above', name: string): Measure => ({
    from: { x: from, y },
    to: { x: to, y },
    side,
    row: 0,
    value: to - from,
    name,
  });
  const measures = [
    along(start.x, mouth, bottom, 'below', 'basin'),
    along(mouth, end.x, bottom, 'below', 'die'),
  ];
  measures.push(upright(start.x, start.y, roof[0]!.y, 'left', 'back wall'));
  for (const opening of section.openings) {
    if (opening.wall === 'roof') {
      const a = roof[opening.from];
      const b = roof[opening.to];
      if (a && b) measures.push(along(a.x, b.x, top, 'above', 'opening'));
    }
  }
  return [...measures.filter((m) => m.value > 1e-6), ...gapsOf(section)];
}

function upright(x: number, low: number, high: number, side: 'left' | 'inside', name: string): Measure {
  return { from: { x, y: low }, to: { x, y: high }, side, row: 0, value: high - low, name };
}

/** Gap between floor and roof under each long stretch of roof, at most three, no gap twice in a row. */
function gapsOf(section: Section): Measure[] {
  const length = section.floor[section.floor.length - 1]!.x - section.floor[0]!.x;
  const gaps: Measure[] = [];
  for (const [from, to] of roofStretches(section)) {
    for (let i = from; i < to; i++) {
      const a = section.roof[i]!;
      const b = section.roof[i + 1]!;
      if (b.x - a.x < SHORT_SHARE * length) continue;
      const usual = a.x + (b.x - a.x) * 0.62;
      const x = Math.abs(usual - section.pivot.x) < 0.06 * length ? a.x + (b.x - a.x) * 0.3 : usual;
      const gap = upright(
        x,
        lineAt(section.floor, x, 'right'),
        lineAt(section.roof, x, 'right'),
        'inside',
        'gap',
      );
      const before = gaps[gaps.length - 1];
      if (!before || Math.abs(before.value - gap.value) > 5e-4) gaps.push(gap);
    }
  }
  return gaps.slice(0, 3);
}
