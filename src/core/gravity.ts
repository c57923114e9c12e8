/** Acceleration of free fall used everywhere [m/s²]. Rounded; the check tables in tests/ use the same value. */
export const GRAVITY = 9.81;
