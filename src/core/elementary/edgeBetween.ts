/**
 * The last value, from `inside` where something holds towards `outside` where it does not, at which it holds: halved until
 * the two are within `tolerance` of each other, in their own unit. It is taken to change once on the way.
 */
export function edgeBetween(
  holds: (value: number) => boolean,
  inside: number,
  outside: number,
  tolerance: number,
): number {
  let [last, beyond] = [inside, outside];
  while (Math.abs(beyond - last) > tolerance) {
    const middle = (last + beyond) / 2;
    // Two neighbours have no number between them.
    if (middle === last || middle === beyond) return last;
    if (holds(middle)) last = middle;
    else beyond = middle;
  }
  return last;
}
