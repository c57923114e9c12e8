import type { NarrowWay } from '$src/core/pour/record';
import type { Sample } from './sample';
import type { Watcher } from './watcher';

export interface GasWayWatch extends Watcher {
  /** Null where gas had vents or a wide way all along, or is not counted. */
  narrowest(): NarrowWay | null;
}

/** Gas that counts, square to the axis [m²], as for a pocket. */
const LEAST_GAS = 30e-6;
/** A way counts as it was at its widest in 30 looks (60 ms): a wave that shuts it for less shuts nothing in. As for a pocket. */
const LOOKS = 30;
/** A vent's mesh cell fuller than this is covered (share of its volume). */
const COVERED = 0.995;

/**
 * How near a pour came to shutting gas in. The solver shuts a passage when its last sliver fills, which a mesh a little
 * finer, or a charge a little larger, does sooner or not at all; the height that was left is a figure that settles.
 */
export function watchGasWay(): GasWayWatch {
  const recent = new Array<NarrowWay | null>(LOOKS).fill(null);
  let looks = 0;
  let narrowest: NarrowWay | null = null;

  function look(sample: Sample): void {
    if (!sample.flow.gas || sample.front <= 0) return;
    recent[looks++ % LOOKS] = wayOut(sample);
    const lasting = widestOf(recent);
    if (lasting && (narrowest === null || lasting.share < narrowest.share)) narrowest = lasting;
  }

  return { name: 'way out for gas', look, folds: () => [], narrowest: () => narrowest };
}

/** The widest of ways, null as soon as there was none that was narrow. */
function widestOf(ways: readonly (NarrowWay | null)[]): NarrowWay | null {
  let widest: NarrowWay | null = null;
  for (const way of ways) {
    if (way === null) return null;
    if (widest === null || way.share > widest.share) widest = way;
  }
  return widest;
}

/** The narrowest place between gas in the die and the mouth, seen from the die end; null when no gas has to pass one. */
function wayOut({ profile, time, inclination, flow, mesh }: Sample): NarrowWay | null {
  const ventFrom = lastOpenVent({ flow, mesh });
  let gas = 0;
  let place = -1;
  let share = 1;
  for (let k = profile.places - 1; k > 0; k--) {
    const here = Math.max(0, profile.opening[k]! - profile.depth[k]!);
    // What lies before an open vent leaves by it.
    if (k * profile.spacing <= ventFrom) break;
    if (gas > LEAST_GAS && here < share * profile.opening[k]!) {
      share = here / profile.opening[k]!;
      place = k;
    }
    gas += here * profile.spacing;
  }
  if (place < 0) return null;
  return {
    share,
    height: share * profile.opening[place]!,
    place: place * profile.spacing,
    time,
    inclination,
  };
}

/** The open vent furthest from the mouth [m from it]; negative when there is none. */
function lastOpenVent({ flow, mesh }: Pick<Sample, 'flow' | 'mesh'>): number {
  let furthest = -1;
  for (const { cell, area } of flow.gas!.vents)
    if (area > 0 && flow.volume[cell]! < COVERED * mesh.volume[cell]!)
      furthest = Math.max(furthest, mesh.facePlace[cell + 1]!);
  return furthest;
}
