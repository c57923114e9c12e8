/** Numerical thresholds of the scheme, together, each with what goes wrong on either side. */

/**
 * Weight of the new level in the pressure force. 1 loses 4.4 % of a small slosh of 0.45 s a period at 1 ms, and 0.5 half
 * as much, since the discharge is that of the new speed whatever the weight; less lets shorelines ring. See docs/model.md
 * for the decay formula that the tests hold it to.
 */
export const TIME_WEIGHT = 0.55;

/** Depth below which a cell counts as dry for slopes and the front [m]. Larger: the front lags. Smaller: slopes at the front ring. */
export const DRY_DEPTH = 2e-5;

/**
 * Depth ahead of a front at which its skin has passed the face [m]. A front at its stand must be able to lay this
 * down in the next cell without falling below the stand itself: at 20 µm a puddle stands 10 µm too deep.
 */
export const SKIN_DEPTH = 1e-6;

/** A cell this close to its volume counts as full (relative). */
export const FULL_SHARE = 1 - 1e-12;

/** Longest step [s]: small sloshes lose amplitude in proportion to it. */
export const LONGEST_STEP = 1e-3;
/** The same once nothing that the step's length would change is still to come: see `isCalm` in pour/runPour.ts. */
export const CALM_STEP = 2e-3;
/** Share of a cell that metal may cross in a step. */
export const COURANT = 0.5;
/** Depth whose wave may cross at most one mesh spacing a step [m]. */
export const WAVE_DEPTH = 0.03;

/** Time-centring of the face area is kept within this factor, so that filling cells cannot throw the metal. */
export const CENTRING_LIMIT = 1.5;

/** Plain Newton updates before their steps are searched. More: cycles take longer to be seen. Fewer: searches that nothing needed. */
export const NEWTON_CAP = 10;
/** Volume residual, relative to the largest ordinary cell, at which the level solve has converged. */
export const SOLVE_TOLERANCE = 1e-12;

/** Turbulent drag coefficient of a smooth coated channel (from memory of open-channel practice; low confidence). */
export const DRAG = 0.003;

/** Residual, in tolerances, from which on one update more is likely the last and worth judging: Newton squares what is left. */
export const NEARLY_SOLVED = 1e5;
/** Speed below which a face has no direction of its own and the levels say which way metal passes [m/s]. */
export const STILL = 1e-7;
/** Height below which a passage lets nothing through [m]. */
export const CLOSED = 1e-12;
/** Area of metal about a face below which there is nothing to carry momentum [m²]. */
export const NO_METAL = 1e-14;
/** Depth past the last cell [m]: no front is there. */
export const NO_CELL = 1e9;
/** Weight that makes the row of a held level outweigh its neighbours. */
export const HELD = 1e9;
/** Share of its diagonal below which a pivot is round-off. */
export const LOST_PIVOT = 1e-13;
/** Cells that hold less than this share are all but dry: their volume grows with the square of the level. */
export const TRACE = 1e-4;
