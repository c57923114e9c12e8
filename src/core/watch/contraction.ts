import type { Fold } from '$src/core/pour/record';
import { STRICTER } from './clear';
import { foldSize } from './foldSize';
import { FRONT_DEPTH, PLACE_STEP, type Sample } from './sample';
import type { Watcher } from './watcher';

/** Length of skin whose two ends are compared [m] and the slowest closing that counts [1/s]. */
const BIN = 10e-3;
const CLOSING_LIMIT = 2;
/** Skin folded per die length below which nothing is reported, and the steps to marked and heavy. The steps are ours. */
const REPORTED = 0.25;
const MARKED = 1;
const HEAVY = 3;

export interface ContractionWatch extends Watcher {
  /** Skin folded in so far per unit width [m]. */
  folded(): number;
}

/**
 * Skin crushed: where the free surface closes on itself its skin has nowhere to go but into the metal. Sum over
 * fixed 10 mm bins of the closing speed, where it closes faster than 2 per second, times the time it lasts. A bin
 * counts when either of its ends is free: a bore that fills the opening draws the surface ahead of it under, and
 * between a free place and a roofed one is all there is of it. (With both ends free asked for, such a bore counted
 * only while the mesh smeared it, and what was folded in halved from 100 to 800 mesh cells.)
 * Its time is when half of it was folded in and its place the mean over where: both settle with the mesh, the
 * moment of the quickest closing does not.
 */
export function watchContraction(dieLength: number): ContractionWatch {
  const step = Math.round(BIN / PLACE_STEP);
  const byPlace = new Float64Array(Math.floor(dieLength / BIN) + 1);
  let folded = 0;
  const history: { time: number; inclination: number; folded: number }[] = [];
  let peakRate = 0;

  function look(sample: Sample): void {
    const { profile } = sample;
    for (let k = 0; k + step < profile.places; k += step) {
      if (
        profile.depth[k]! < FRONT_DEPTH ||
        profile.depth[k + step]! < FRONT_DEPTH ||
        (profile.roofed[k] && profile.roofed[k + step])
      )
        continue;
      const closing = profile.speed[k]! - profile.speed[k + step]!;
      const rate = closing / BIN;
      if (rate <= CLOSING_LIMIT) continue;
      folded += closing * sample.elapsed;
      byPlace[k / step] = byPlace[k / step]! + closing * sample.elapsed;
      peakRate = Math.max(peakRate, rate);
    }
    if (folded > (history.at(-1)?.folded ?? 0))
      history.push({ time: sample.time, inclination: sample.inclination, folded });
  }

  function folds(): Fold[] {
    if (folded < REPORTED * dieLength) return [];
    const middle = history.find((entry) => entry.folded >= folded / 2)!;
    const moment = byPlace.reduce((sum, here, k) => sum + here * (k + 0.5) * BIN, 0);
    return [
      {
        kind: 'skin contraction',
        size: foldSize(folded / dieLength, MARKED, HEAVY),
        isClear: folded >= STRICTER * REPORTED * dieLength,
        time: middle.time,
        place: moment / folded,
        inclination: middle.inclination,
        severity: { value: folded, quantity: 'skin folded in per width', unit: 'm' },
        details: { peak_rate_per_s: peakRate, folded_per_die_length: folded / dieLength, bin_m: BIN },
        cause:
          'Metal behind runs into slower metal ahead, and the skin between them is drawn together and folded in.',
        cure: 'Keep the front a full quiet wall: no drop at the lip, no wave from the end wall. Try the tilt slower and quicker: a front that creeps in steps folds skin too.',
      },
    ];
  }

  return { name: 'skin contraction', look, folds, folded: () => folded };
}
