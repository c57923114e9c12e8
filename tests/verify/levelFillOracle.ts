import polygonClipping, { type MultiPolygon, type Pair, type Polygon } from 'polygon-clipping';
import { closedRoof } from '$src/core/section/closedRoof';
import type { Section } from '$src/core/section/section';

/**
 * An independent level fill: the section as a polygon, cut with the half-plane below the level by a general
 * polygon library (polygon-clipping, Martinez, Rueda & Feito 2009). Shares nothing with the column formulas.
 */
export function metalBelow(section: Section, inclination: number, level: number): MultiPolygon {
  const outline: Pair[] = [...section.floor, ...[...closedRoof(section)].reverse()].map(
    ({ x, y }): Pair => [x, y],
  );
  return polygonClipping.intersection([[...outline, outline[0]!]], halfPlaneBelow(inclination, level));
}

const FAR = 20;

/** A square 40 m wide whose upper side is the level line, in the die frame. */
function halfPlaneBelow(inclination: number, level: number): Polygon {
  const sin = Math.sin(inclination);
  const cos = Math.cos(inclination);
  const corner = (along: number, up: number): Pair => [along * cos + up * sin, -along * sin + up * cos];
  const ring = [corner(-FAR, level), corner(-FAR, level - FAR), corner(FAR, level - FAR), corner(FAR, level)];
  return [[...ring, ring[0]!]];
}

function areaOf(polygon: Polygon): number {
  return polygon.reduce((sum, ring, i) => sum + (i === 0 ? 1 : -1) * Math.abs(shoelace(ring)), 0);
}

export function shoelace(ring: readonly Pair[]): number {
  const [x0, y0] = ring[0] ?? [0, 0];
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const [xa, ya] = ring[i]!;
    const [xb, yb] = ring[(i + 1) % ring.length]!;
    twice += (xa - x0) * (yb - y0) - (xb - x0) * (ya - y0);
  }
  return twice / 2;
}

/** Area of the pieces of metal that lie, with the greater part of their length, between from and to. */
export function areaBetween(metal: MultiPolygon, from: number, to: number): number {
  const lies = (polygon: Polygon) => {
    const xs = polygon[0]!.map(([x]) => x);
    const left = Math.min(...xs);
    const right = Math.max(...xs);
    return Math.min(to, right) - Math.max(from, left) > (right - left) / 2;
  };
  return metal.filter(lies).reduce((sum, polygon) => sum + areaOf(polygon), 0);
}
