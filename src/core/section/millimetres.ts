import { toMillimetres } from '$src/core/units';

/** A length for a sentence, to a tenth of a millimetre [mm], with a true minus. */
export const millimetres = (metres: number): string => {
  const tenths = Math.round(toMillimetres(metres) * 10);
  return tenths === 0 ? '0' : String(tenths / 10).replace('-', '\u2212');
};
