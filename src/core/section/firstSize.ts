import { fromMillimetres } from '$src/core/units';
import { FLUSH_BASIN, type FlushBasin } from './shapes';

/**
 * A small flush basin whose first pour is sound, feeder and all: a die of 0.2 kg of aluminium, and as much again over its
 * mouth. The whole charge stands in the basin at +30°, under the lip. Chosen by what is computed of it; ours, no source.
 */
export const FIRST_SIZE: FlushBasin = {
  ...FLUSH_BASIN,
  basinLength: fromMillimetres(100),
  basinDepth: fromMillimetres(100),
  basinWidth: fromMillimetres(90),
  roofReach: fromMillimetres(60),
  dieLength: fromMillimetres(150),
  dieHeight: fromMillimetres(20),
  cavityWidth: fromMillimetres(30),
};
