import type { Reading } from './readRows';

const TURN = 2 * Math.PI;

/** Without the jump where an instrument counts on from +180° to −180°. */
export function unwrapped(readings: readonly Reading[]): Reading[] {
  const turns = (angle: number) => Math.round(angle / TURN) * TURN;
  let last = 0;
  return readings.map(({ time, angle }, index) => {
    // The first is brought within half a turn of level, each later one within half a turn of the one before.
    last = angle - (index === 0 ? turns(angle) : turns(angle - last));
    return { time, angle: last };
  });
}
