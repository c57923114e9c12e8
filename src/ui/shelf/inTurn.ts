/** Runs pieces of work one after the other, in the order they were asked for; one that fails does not hold up the next. */
export function makeTurns(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(work, work);
    last = mine;
    return mine;
  };
}
