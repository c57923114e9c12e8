import { lineAt } from '$src/core/section/lineAt';
import type { Point } from '$src/core/section/section';

/** A wall that goes up or down this steeply is a step of it. This and the two shares below are ours, no source. */
const STEEP = 4;
/** A step takes this share of the height between floor and roof, or is none that parts basin from die. */
const SHARE = 0.15;
const SAME = 1e-6;
/** Steps nearer to the ends than this share of the length are the walls there. */
const WALL = 0.05;

/** Where an outline narrows at a step, and which wall does it [m along the axis]. */
interface Step {
  readonly x: number;
  readonly wall: 'floor' | 'roof';
}

/** Where the basin's opening and the basin itself seem to end [m along the axis]; null where no step of the outline says so. */
export interface LikelyBasin {
  readonly rim: number | null;
  readonly mouth: number | null;
}

/**
 * Reads the basin from the steps of an outline: its opening ends where the roof first comes down, and the die begins at the next
 * step that narrows the way, or where the floor comes up. A roof that comes down once only may reach back over the
 * basin, so that the mouth is not told by it.
 */
export function likelyBasin(floor: readonly Point[], roof: readonly Point[]): LikelyBasin {
  const [back, end] = [floor[0]!.x, floor.at(-1)!.x];
  const reach = WALL * (end - back);
  const steps = [...stepsOf(floor, roof, 'floor'), ...stepsOf(roof, floor, 'roof')]
    .filter(({ x }) => x > back + reach && x < end - reach)
    .sort((a, b) => a.x - b.x);
  const rim = steps.find(({ wall }) => wall === 'roof')?.x ?? null;
  const mouth = steps.find(({ x, wall }) => wall === 'floor' || (rim !== null && x > rim + SAME));
  return { rim, mouth: mouth?.x ?? null };
}

/** The steps of a wall towards the other one, each where it ends. */
function stepsOf(points: readonly Point[], other: readonly Point[], wall: Step['wall']): Step[] {
  const inward = wall === 'floor' ? 1 : -1;
  return points.slice(1).flatMap((after, index) => {
    const before = points[index]!;
    const narrowing = inward * (after.y - before.y);
    const height = Math.abs(lineAt(other, before.x, 'left') - before.y);
    const isStep = narrowing > STEEP * (after.x - before.x) && narrowing > SHARE * height;
    return isStep ? [{ x: after.x, wall }] : [];
  });
}
