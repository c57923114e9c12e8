import type { Metal } from './metal';
import type { OwnThermal, ThermalField } from './thermal';

/** The metal with one thermal property of its own, or, for null, with that of its base again. */
export function withThermal<F extends ThermalField>(
  metal: Metal,
  field: F,
  own: OwnThermal[F] | null,
): Metal {
  const { thermal = {}, ...rest } = metal;
  const { [field]: _, ...others } = thermal;
  const next: OwnThermal = own ? { ...others, [field]: own } : others;
  return Object.keys(next).length > 0 ? { ...rest, thermal: next } : rest;
}
