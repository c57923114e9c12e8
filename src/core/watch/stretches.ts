/** Unbroken runs of indices for which `holds` is true, as [first, last] pairs. */
export function stretchesWhere(
  length: number,
  holds: (k: number) => boolean,
): [first: number, last: number][] {
  const runs: [number, number][] = [];
  let first: number | null = null;
  for (let k = 0; k <= length; k++) {
    const inside = k < length && holds(k);
    if (inside) first ??= k;
    else if (first !== null) {
      runs.push([first, k - 1]);
      first = null;
    }
  }
  return runs;
}
