import type { Point } from '$src/core/section/section';

/** A place on the upper edge of the metal. `free` says what the edge is from the node before to this one. */
export interface EdgeNode {
  readonly x: number;
  readonly floor: number;
  readonly top: number;
  readonly free: boolean;
}

/** Thinner metal is not drawn [m]. */
export const THINNEST = 1e-6;

export const topOf = (n: EdgeNode): Point => ({ x: n.x, y: n.top });
export const floorOf = (n: EdgeNode): Point => ({ x: n.x, y: n.floor });
