/** Closed time after filling, common practice for small aluminium castings, no source [s]. */
export const COMMON_DWELL = { shortest: 60, longest: 120, mark: 'common practice, no source' } as const;

export interface Ejection {
  /** Not before this after the end of the fill [s]. */
  readonly earliest: number;
  /** What set it. */
  readonly because: 'all is solid by the estimate' | 'the dwell you have proven';
  /** Freezing time of the slowest part, feeder included, by the estimate [s]. */
  readonly solid: number;
  /** Whether it lies in the common range; null for metals that range is not of. */
  readonly withinCommon: boolean | null;
}

/**
 * Earliest opening of the die. Never shorter than the dwell the user has proven on real castings: a die opened before
 * the feeder is solid lets liquid out, and a computed time alone is no reason to shorten a dwell.
 *
 * @param freezingTimes of every part and of the feeder [s], at least one
 * @param provenDwell [s]; null = none proven yet
 */
export function earliestEjection(
  freezingTimes: readonly number[],
  provenDwell: number | null,
  isAluminium: boolean,
): Ejection {
  const solid = Math.max(...freezingTimes);
  const proven = provenDwell ?? 0;
  const earliest = Math.max(solid, proven);
  return {
    earliest,
    because: proven >= solid ? 'the dwell you have proven' : 'all is solid by the estimate',
    solid,
    withinCommon: isAluminium ? earliest >= COMMON_DWELL.shortest && earliest <= COMMON_DWELL.longest : null,
  };
}
