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

/** Runs with those made one between whose end and next beginning `isOne` holds. */
export function joined(
  runs: readonly (readonly [first: number, last: number])[],
  isOne: (end: number, beginning: number) => boolean,
): [first: number, last: number][] {
  const longer: [number, number][] = [];
  for (const [first, last] of runs) {
    const before = longer.at(-1);
    if (before && isOne(before[1], first)) before[1] = last;
    else longer.push([first, last]);
  }
  return longer;
}
