/** Sizes a section may have: anything outside is a slip of unit or of the hand. */
export const SIZES = {
  /** Longest and widest [m]. */
  most: 5,
  /** Shortest and narrowest [m]. */
  least: 0.001,
  /** Lowest height between floor and roof [m]; thinner gaps do not run full. */
  leastHeight: 0.0001,
  mostCavities: 100,
  mostPoints: 200,
} as const;
