import type { CellId } from '$src/cells/kinds';
import { motionOf } from '$src/core/tilt/motionOf';
import type { Knot, MachineTilt, PlainTilt } from '$src/core/tilt/tilt';
import { bench } from '../../bench.svelte';
import { ledBy } from '../frontLed/ledBy';

/** A tilt of the book that a machine is set against. */
export interface OtherTilt {
  readonly id: CellId;
  readonly name: string;
  readonly tilt: PlainTilt;
}

/** Tilts of the book that are known; a front-led one is as its pour has found it. */
export function otherTilts(tilt: MachineTilt): OtherTilt[] {
  return bench.cellsOfKind('tilt').flatMap((cell): OtherTilt[] => {
    if (bench.evaluation(cell.id).state !== 'ready' || cell.tilt === tilt) return [];
    if (cell.tilt.kind !== 'front-led') return [{ id: cell.id, name: cell.name, tilt: cell.tilt }];
    const found = ledBy(cell)?.found;
    return found ? [{ id: cell.id, name: cell.name, tilt: found.tries[found.chosen]!.tilt }] : [];
  });
}

const SAMPLES = 160;

/** The tilt at even times. */
export function samplesOf(tilt: PlainTilt): Knot[] {
  const motion = motionOf(tilt);
  return Array.from({ length: SAMPLES + 1 }, (_, i) => {
    const time = (motion.duration * i) / SAMPLES;
    return { time, inclination: motion.inclinationAt(time) };
  });
}

/** When the die is full in a pour turned by that tilt: after that no metal cares how the body turns [s]. */
export function fullAt(id: CellId): number | null {
  const times = bench.cellsOfKind('pour').flatMap((pour) => {
    if (pour.tilt !== id) return [];
    const { record, current } = bench.run(pour.id);
    return current && record ? (record.figures.filledTime ?? []) : [];
  });
  return times.length === 0 ? null : Math.max(...times);
}
