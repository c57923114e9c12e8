import { toMillimetres } from '$src/core/units';

/** A length for a sentence, to a tenth of a millimetre [mm]. */
export const millimetres = (metres: number): string => String(Math.round(toMillimetres(metres) * 10) / 10);
