/** The thing kept under a key, made on first use. */
export function keptUnder<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const made = make();
  map.set(key, made);
  return made;
}

/** The list before when the new one has the same things in it, so that nothing that shows it is redrawn. */
export function sameList<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  const isSame = before.length === now.length && now.every((item, index) => Object.is(item, before[index]));
  return isSame ? before : now;
}
