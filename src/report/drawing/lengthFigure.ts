import { toInches, toMillimetres } from '$src/core/units';

/** A length [m] without its unit, as written on a dimension line. */
export function lengthFigure(metres: number, unit: 'mm' | 'in'): string {
  const value = unit === 'mm' ? toMillimetres(metres) : toInches(metres);
  const text = Math.abs(value)
    .toFixed(unit === 'mm' ? 1 : 3)
    .replace(/\.?0+$/, '');
  return value < 0 && text !== '0' ? `−${text}` : text;
}
