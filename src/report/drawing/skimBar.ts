import type { Point } from '$src/core/section/section';

/** As drawn; where a bar hangs is the shop's business, only its lower edge is given. */
const THICKNESS = 4e-3;
const ABOVE_METAL = 18e-3;
const FROM_LIP = 15e-3;
/** Of a small pool's surface, so that the bar stays in it. */
const LARGEST_SHARE = 0.3;

interface BasinMetal {
  /** Outline of the metal in the basin, die frame [m]. */
  readonly outline: readonly Point[];
  /** Lab elevation of its surface [m], and of that above (+) or below (−) the lip. */
  readonly level: number;
  readonly fromLip: number;
}

/**
 * Corners of a skim bar in the die frame [m], plumb, a little behind the lip. It hangs clear of the metal when its lower
 * edge is above the surface.
 * @param lowerEdge above (+) or below (−) the lip [m]
 */
export function skimBarCorners(
  { outline, level, fromLip }: BasinMetal,
  lowerEdge: number,
  inclination: number,
): readonly Point[] {
  const [sin, cos] = [Math.sin(inclination), Math.cos(inclination)];
  const across = outline.map(({ x, y }) => x * cos - y * sin);
  const [first, last] = [Math.min(...across), Math.max(...across)];
  const right = last - Math.min(FROM_LIP, LARGEST_SHARE * (last - first));
  const bottom = level - fromLip + lowerEdge;
  const top = Math.max(level, bottom) + ABOVE_METAL;
  const toDie = (u: number, z: number): Point => ({ x: u * cos + z * sin, y: z * cos - u * sin });
  const left = right - THICKNESS;
  return [toDie(left, bottom), toDie(right, bottom), toDie(right, top), toDie(left, top)];
}
