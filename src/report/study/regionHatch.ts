import type { Region } from './region';

/** What a region of a map is filled with; a region whose metal both folds and laps has two, one over the other. */
export type Hatch = 'folds' | 'laps' | 'misruns' | 'near' | 'gas' | 'unfilled' | 'spills';

const HATCHES: Partial<Readonly<Record<Region, readonly Hatch[]>>> = {
  'near the limit': ['near'],
  'folds film': ['folds'],
  'folds film and laps': ['folds', 'laps'],
  laps: ['laps'],
  misrun: ['misruns'],
  'gas held': ['gas'],
  'not filled': ['unfilled'],
  'spills metal': ['spills'],
};

/** None where the metal is sound, or where there is no pour to judge. */
export const hatchesOf = (region: Region): readonly Hatch[] => HATCHES[region] ?? [];

/** Regions that have a hatch, in the order a key tells them. */
export const HATCHED = Object.keys(HATCHES) as readonly Region[];
