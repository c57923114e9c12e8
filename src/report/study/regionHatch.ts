import type { Region } from './region';

/** What a region of a map is filled with; a region with several faults has several, one over the other. */
export type Hatch = 'folds' | 'laps' | 'misruns' | 'near' | 'gas' | 'unfilled' | 'spills';

const HATCHES: Partial<Readonly<Record<Region, readonly Hatch[]>>> = {
  'near the limit': ['near'],
  'folds film': ['folds'],
  'folds film and laps': ['folds', 'laps'],
  'folds film and spills': ['folds', 'spills'],
  'folds film, laps and spills': ['folds', 'laps', 'spills'],
  laps: ['laps'],
  misrun: ['misruns'],
  'gas held': ['gas'],
  'not filled': ['unfilled'],
  'spills metal': ['spills'],
};

/** None where the metal is sound, or where there is no pour to judge. */
export const hatchesOf = (region: Region): readonly Hatch[] => HATCHES[region] ?? [];

/** A ring round a point, as an SVG path that begins there: its feeder cannot feed the casting [px]. */
export const FEEDER_RING = 'm-3.2 0a3.2 3.2 0 1 0 6.4 0a3.2 3.2 0 1 0 -6.4 0';

/** What such a ring means. */
export const FEEDER_RING_WORDS = 'the die fills, but the feeder cannot feed the casting';

/** What is sound on a map where some feeder is short. */
export const SOUND_FILLING = 'sound, as far as the die fills';

/** Regions that have a hatch, in the order a key tells them. */
export const HATCHED = Object.keys(HATCHES) as readonly Region[];
