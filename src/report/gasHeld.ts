import type { Figures } from '$src/core/pour/record';

type Held = { readonly figures: Pick<Figures, 'gasHeld' | 'filledTime'> };

/** Whether gas shut in by the metal is what keeps the die from filling. */
export const gasHeld = ({ figures }: Held): boolean => figures.gasHeld && figures.filledTime === null;
