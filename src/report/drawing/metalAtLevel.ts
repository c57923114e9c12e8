import type { Point } from '$src/core/section/section';
import type { MetalShape } from './metalShape';

const ON_LEVEL = 1e-7;

/**
 * Level metal as drawn. `polygons` are its bodies in the die frame [m], `levels` the lab elevations of its pools [m].
 * The skin is every edge that lies on one of the levels; edges along steel are none, unless the steel itself lies level there.
 */
export function metalAtLevel(
  polygons: readonly (readonly Point[])[],
  levels: readonly number[],
  inclination: number,
): MetalShape {
  const elevation = (p: Point) => p.x * Math.sin(inclination) + p.y * Math.cos(inclination);
  const isOn = (p: Point, level: number) => Math.abs(elevation(p) - level) < ON_LEVEL;
  const skins = polygons.flatMap((polygon) =>
    polygon.flatMap((a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      return levels.some((level) => isOn(a, level) && isOn(b, level)) ? [[a, b]] : [];
    }),
  );
  return { bodies: polygons, skins };
}
