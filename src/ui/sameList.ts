/** The list before when the new one has the same things in it, so that nothing that shows it is redrawn. */
export function sameList<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  const isSame = before.length === now.length && now.every((item, index) => Object.is(item, before[index]));
  return isSame ? before : now;
}
