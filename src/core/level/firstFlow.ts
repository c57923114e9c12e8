/** When metal first passes the mouth. */
export type FirstFlow =
  | { readonly kind: 'angle' /** [rad] */; readonly inclination: number }
  | { readonly kind: 'already in the die' }
  | { readonly kind: 'never' };

/** Metal this far past the mouth is in the die [m]. */
export const IN_THE_DIE = 1e-9;

/** The front has passed the mouth, by its place from there [m]. */
export const isInTheDie = (front: number): boolean => front > IN_THE_DIE;

/** First flow read from a level path's inclination [rad] and front [m]. */
export function firstFlowOf(inclination: Float64Array, front: Float64Array): FirstFlow {
  const index = front.findIndex(isInTheDie);
  if (index < 0) return { kind: 'never' };
  if (index === 0) return { kind: 'already in the die' };
  return { kind: 'angle', inclination: inclination[index]! };
}
