/** Most that floor and roof of a section stray from what was drawn [m], where they need no more points than MOST_CORNERS. */
export const LARGEST_STRAY = 1e-4;
/** Most that the first, fine cutting of a curve strays from it [m]. */
export const FINE_CUT = 2.5e-7;
/** The same in a drawing of so many curves that they would have too many points [m]. */
export const COARSE_CUT = 1e-5;
/** Places of a section from a drawing are rounded to so many parts of a metre: finer than any drawing is made. */
export const PARTS_OF_METRE = 1e6;
/** Points of a floor or roof; one that needs more is let stray further. */
export const MOST_CORNERS = 120;
