import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';

/** Rounding of two sums of one volume. */
const ROUNDING = 1e-9;

/** Metal that the charge lacks to fill the cavities, however it is tilted [m³]; 0 when it is enough. */
export function shortOfCavity(section: Section, volume: number): number {
  const cavity = cavityVolume(section);
  return volume < cavity * (1 - ROUNDING) ? cavity - volume : 0;
}
