/**
 * What a taper adds to a stretch with straight floor and roof, over the volume with its left width throughout [m³].
 * Width and height are straight lines of x, their product is integrated exactly.
 *
 * @param gain width at the right end less that at the left [m]
 */
export function taperVolume(length: number, gain: number, heightLeft: number, heightRight: number): number {
  return (gain * length * (heightLeft + 2 * heightRight)) / 6;
}
