import { basinCapacity } from '$src/core/level/basinCapacity';
import { volumeFromHead } from '$src/core/level/head';
import { millimetres } from '$src/core/section/millimetres';
import type { Section } from '$src/core/section/section';
import { degrees } from '$src/core/tilt/degrees';
import { fromMillimetres } from '$src/core/units';
import { HEADS } from './firstCharge';
import { largestHead } from './largestHead';

/** A hair, so that what just fits is not refused for a rounding [m³]. */
const ROUNDING = 1e-12;

/**
 * Why a charge cannot be told by a head that would feed a casting, so that it is told by its level instead: in a pit, say,
 * whose metal stands over no mouth. null where such a head can be asked for.
 *
 * @param section must have passed checkSection
 * @param start inclination at which it is ladled [rad]
 * @param end inclination at which the head would stand [rad]
 */
export function noHeadWords(section: Section, start: number, end: number): string | null {
  const heads = HEADS.map(fromMillimetres).toSorted((a, b) => a - b);
  const volumes = heads.map((head) => volumeFromHead(section, start, end, head));
  const held = basinCapacity(section, start) + ROUNDING;
  if (volumes.some((volume) => volume !== null && volume <= held)) return null;
  const least = heads.findIndex((_, index) => volumes[index] !== null);
  if (least >= 0)
    return `At ${degrees(start)} the basin cannot hold what a head of ${millimetres(heads[least]!)} mm takes. To ask for a head, make it deeper, longer or wider.`;
  const most = largestHead(section, start, end, heads[0]!);
  const words =
    most === 0
      ? `None stands over the mouth at ${degrees(end)}`
      : `No more than ${millimetres(most)} mm stands over the mouth at ${degrees(end)}`;
  return `${words}: the metal would stand over a rim, or run out on the way. To ask for a head, roof more of the basin.`;
}
