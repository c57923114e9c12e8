/** How many results are kept for one first argument: the pours of one section in a large book. */
const KEPT = 64;

interface Result<A extends readonly unknown[], R> {
  readonly args: A;
  readonly result: R;
}

/**
 * The same function, which gives back the same result for the same arguments (by identity; numbers and text by value).
 * What is remembered goes with the first argument, so nothing outlives the book it came from.
 */
export function remember<A extends readonly [object, ...unknown[]], R>(
  compute: (...args: A) => R,
): (...args: A) => R {
  const known = new WeakMap<object, Result<A, R>[]>();
  return (...args) => {
    const results = known.get(args[0]) ?? [];
    const found = results.find((one) => one.args.every((arg, index) => Object.is(arg, args[index])));
    if (found) return found.result;
    const result = compute(...args);
    known.set(args[0], [...results.slice(1 - KEPT), { args, result }]);
    return result;
  };
}
