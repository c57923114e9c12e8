/**
 * A lap: two skins that did not join. Where fronts meet, or where one has stood still, below a stated temperature.
 * The temperature is the user's; the liquidus is taken when none is given (common practice, no source).
 */
export interface Lap {
  readonly kind: 'fronts met cold' | 'front stalled cold';
  /** [s] */
  readonly time: number;
  /** From the mouth along the floor [m]. */
  readonly place: number;
  /** Of the colder metal [K]. */
  readonly temperature: number;
}

/** The colder of two fronts decides. */
export function lapWhereFrontsMeet(
  time: number,
  place: number,
  temperatures: readonly [number, number],
  lapTemperature: number,
): Lap | null {
  const temperature = Math.min(...temperatures);
  return temperature < lapTemperature ? { kind: 'fronts met cold', time, place, temperature } : null;
}

/** Dry stretches between metal that closed between two looks: the mesh cell where the last of each was. Arrays are 1 = metal. */
export function closedGaps(before: Uint8Array, now: Uint8Array): number[] {
  const closed: number[] = [];
  let start = -1;
  for (let i = 0; i < before.length; i++) {
    if (before[i]) {
      if (start > 0 && isClosed(now, start, i)) closed.push((start + i - 1) >> 1);
      start = -1;
    } else if (start < 0) start = i;
  }
  return closed;
}

function isClosed(now: Uint8Array, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (!now[i]) return false;
  return true;
}

/** A front that creeps: where it has been since when. Start with `freshStall`. */
export interface Stall {
  readonly place: number;
  readonly since: number;
  readonly told: boolean;
}

export const freshStall: Stall = { place: Number.NEGATIVE_INFINITY, since: 0, told: false };

/** A front that advances less than this in the time below has stalled [m], [s]. Ours, no source. */
export const STALL_LENGTH = 2e-3;
export const STALL_TIME = 0.1;

/**
 * One look at a front: whether it has now stalled cold. Returns the new state and the lap, once for each stall.
 * Not to be asked once the front has reached the die end.
 */
export function watchStall(
  stall: Stall,
  time: number,
  place: number,
  temperature: number,
  lapTemperature: number,
): { readonly stall: Stall; readonly lap: Lap | null } {
  if (Math.abs(place - stall.place) > STALL_LENGTH)
    return { stall: { place, since: time, told: false }, lap: null };
  const isCold = temperature < lapTemperature && time - stall.since >= STALL_TIME;
  if (!isCold || stall.told) return { stall, lap: null };
  return {
    stall: { ...stall, told: true },
    lap: { kind: 'front stalled cold', time, place, temperature },
  };
}
