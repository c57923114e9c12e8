import type { Fold } from '$src/core/pour/record';
import { STRICTER } from './clear';
import { foldSize } from './foldSize';
import type { Sample } from './sample';
import type { Watcher } from './watcher';

/** A front that moves less than this [m] for at least this long [s] has stopped. */
const STILL_LENGTH = 2e-3;
const STILL_TIME = 0.4;
/** A front this far behind where it has been has fallen back [m]. */
const FALL_BACK = 10e-3;
const TOUCH = 1e-3;
/** Seconds at rest from which a stall is marked, heavy. Ours: the film thickens with time. */
const MARKED = 1;
const HEAVY = 3;

/** A front in the die that stops and starts again, or falls back and returns: its film thickens and laps. */
export function watchStalls(): Watcher {
  const folds: Fold[] = [];
  let anchor: { front: number; time: number; inclination: number } | null = null;
  let furthest = 0;
  let back: { distance: number; place: number; time: number; inclination: number } | null = null;
  let arrived = false;

  function look(sample: Sample): void {
    arrived ||= sample.front >= sample.dieLength - TOUCH;
    if (arrived || sample.front <= 0 || (sample.time === 0 && sample.front > 0)) {
      anchor = null;
      furthest = Math.max(furthest, sample.front);
      return;
    }
    anchor ??= { front: sample.front, time: sample.time, inclination: sample.inclination };
    if (Math.abs(sample.front - anchor.front) > STILL_LENGTH) {
      const rested = sample.time - anchor.time;
      if (rested > STILL_TIME && sample.front > anchor.front) folds.push(stall(anchor, rested));
      anchor = { front: sample.front, time: sample.time, inclination: sample.inclination };
    }
    noteFallBack(sample);
  }

  function noteFallBack(sample: Sample): void {
    const distance = furthest - sample.front;
    if (distance > FALL_BACK && distance > (back?.distance ?? 0))
      back = { distance, place: furthest, time: sample.time, inclination: sample.inclination };
    if (back && sample.front >= furthest) {
      folds.push(fallBack(back));
      back = null;
    }
    furthest = Math.max(furthest, sample.front);
  }

  return { name: 'stalls', look, folds: () => folds };
}

function stall(at: { front: number; time: number; inclination: number }, rested: number): Fold {
  return {
    kind: 'front stalls',
    size: foldSize(rested, MARKED, HEAVY),
    isClear: rested > STRICTER * STILL_TIME,
    time: at.time,
    place: at.front,
    inclination: at.inclination,
    severity: { value: rested, quantity: 'time at rest', unit: 's' },
    details: {},
    cause: 'The front stops, its film thickens, and the metal that moves on breaks out of it: a lap line.',
    cure: 'Keep the front moving: no pause in the tilt while it is in the die, a warmer die, a more insulating coat.',
  };
}

function fallBack(back: { distance: number; place: number; time: number; inclination: number }): Fold {
  return {
    kind: 'front falls back',
    size: foldSize(back.distance, 20e-3, 50e-3),
    isClear: back.distance > STRICTER * FALL_BACK,
    time: back.time,
    place: back.place,
    inclination: back.inclination,
    severity: { value: back.distance, quantity: 'distance fallen back', unit: 'm' },
    details: {},
    cause: 'The front runs up the die, falls back and leaves its skin on the wall before it returns.',
    cure: 'Start the tilt more smoothly; a sloshing basin drives the front to and fro.',
  };
}
