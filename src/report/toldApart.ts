import { toCubicCentimetres } from '$src/core/units';
import { fixed, significant } from './wording';

/** Two volumes [m³] in cubic centimetres, as fine as it takes to see which is more. */
export function toldApart(...volumes: readonly [number, number]): readonly string[] {
  const [a, b] = volumes.map((volume) => significant(toCubicCentimetres(volume)));
  return a === b ? volumes.map((volume) => fixed(toCubicCentimetres(volume), 1)) : [a!, b!];
}
