import { polygonArea } from 'd3';
import type { Point } from '$src/core/section/section';

/** Area of a polygon [m²]. */
export const areaOf = (polygon: readonly Point[]): number =>
  Math.abs(polygonArea(polygon.map(({ x, y }): [number, number] => [x, y])));
