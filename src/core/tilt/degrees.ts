import { toDegrees } from '$src/core/units';

/** An angle [rad] for a sentence, to a tenth of a degree: "−90°". */
export const degrees = (radians: number): string =>
  `${Number(toDegrees(radians).toFixed(1))}°`.replace('-', '−');
