/** Volumes of ladles and basins [m³], lengths [m]. */
export function frustumVolume(bottomRadius: number, topRadius: number, height: number): number {
  return (Math.PI * height * (bottomRadius ** 2 + bottomRadius * topRadius + topRadius ** 2)) / 3;
}

export function capVolume(sphereRadius: number, height: number): number {
  return (Math.PI * height ** 2 * (3 * sphereRadius - height)) / 3;
}

export function sphereVolume(radius: number): number {
  return (4 * Math.PI * radius ** 2 * radius) / 3;
}

/** A lying cylinder filled to a depth, 0 to 2 radius. */
export function lyingCylinderVolume(radius: number, length: number, depth: number): number {
  const below = radius - depth;
  const half = Math.acos(below / radius);
  return length * (radius ** 2 * half - below * Math.sqrt(Math.max(0, radius ** 2 - below ** 2)));
}

/** A basin with flat rectangular bottom and top: the prismatoid rule, exact for straight sides. */
export function basinVolume(
  bottom: readonly [length: number, width: number],
  top: readonly [length: number, width: number],
  height: number,
): number {
  const middle = ((bottom[0] + top[0]) / 2) * ((bottom[1] + top[1]) / 2);
  return (height / 6) * (bottom[0] * bottom[1] + 4 * middle + top[0] * top[1]);
}
