import type { Point } from '$src/core/section/section';

/** A change of frame that keeps lines straight: where the origin and a step along each axis come to lie. */
export interface Affine {
  readonly origin: Point;
  readonly alongX: Point;
  readonly alongY: Point;
}

export const UNCHANGED: Affine = { origin: { x: 0, y: 0 }, alongX: { x: 1, y: 0 }, alongY: { x: 0, y: 1 } };

/** Left and right changed. */
export const MIRRORED: Affine = { ...UNCHANGED, alongX: { x: -1, y: 0 } };

/** Where a step, which has no place, comes to point. */
const turned = ({ alongX, alongY }: Affine, { x, y }: Point): Point => ({
  x: x * alongX.x + y * alongY.x,
  y: x * alongX.y + y * alongY.y,
});

export const applied = (affine: Affine, point: Point): Point => {
  const { x, y } = turned(affine, point);
  return { x: x + affine.origin.x, y: y + affine.origin.y };
};

/** No step becomes longer by more than this: the root of the sum of squares, where the axes do not stay square. */
export const stretchOf = ({ alongX, alongY }: Affine): number =>
  Math.hypot(alongX.x, alongX.y, alongY.x, alongY.y);

/** The one change that does the inner and then the outer. */
export const after = (outer: Affine, inner: Affine): Affine => ({
  origin: applied(outer, inner.origin),
  alongX: turned(outer, inner.alongX),
  alongY: turned(outer, inner.alongY),
});
