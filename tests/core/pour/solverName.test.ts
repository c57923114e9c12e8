import { describe, expect, it } from 'vitest';
import { SOLVER } from '$src/core/pour/runPour';
import { computed } from '../../books/computed';
import { planOf } from '../../books/planOf';
import { levelOrUphill } from '../../books/sources/levelOrUphill';
import { thinWallWindow } from '../../books/sources/thinWall';

/**
 * Records are kept by the name of the solver that made them. A scheme that gives other figures under the name of the one before
 * would have old pours shown as fresh: whoever changes what comes out gives it a new name, and writes the new figures here.
 * They are no check of what is right; that is in tests/verify.
 */
const NAMED = 'quietpour 9';

/** To six digits: the same on every machine. */
const told = (value: number | null | undefined): string => value?.toPrecision(6) ?? 'none';

/** Arrival and fill [s], peak front speed [m/s], folded skin [m], time left [s], front at the die end [K]. */
const POURS = [
  ['a front over a sill', levelOrUphill, 'level-sill', '1.31800 2.02600 0.653568 0.549146 4.19948 943.731'],
  ['a thin wall', thinWallWindow, 'pour', '3.37600 3.37400 0.376903 0.00860172 0.848856 883.494'],
] as const;

describe('what the solver of this name gives', () => {
  it('has this name', () => expect(SOLVER).toBe(NAMED));

  it.each(POURS)('%s', (_, book, pour, figures) => {
    const { figures: found } = computed(planOf(book, pour, 100));
    const { arrivalTime, filledTime, peakFrontSpeed, skinFolded, lap, arrivingTemperature } = found;
    const six = [arrivalTime, filledTime, peakFrontSpeed, skinFolded, lap?.margin, arrivingTemperature];
    expect(six.map(told).join(' '), 'other figures need another name').toBe(figures);
  });
});
