/** Time between two looks [ms]. */
const LOOK_EVERY = 10_000;
/** Looks in a row without a sign of life until the worker counts as dead. */
const MOST_MISSED = 6;

/** A browser does not say when it kills a worker for want of memory; only its silence shows. */
export interface SilenceWatch {
  listen(): void;
  /** A sign of life; always true. */
  heard(): boolean;
  rest(): void;
}

/** Looks are counted rather than time measured, so that a machine that was asleep does not count as silence. */
export function watchForSilence(on: { ping: () => Promise<unknown>; onSilence: () => void }): SilenceWatch {
  let missed = 0;
  let timer: ReturnType<typeof setInterval> | undefined;

  function heard(): true {
    missed = 0;
    return true;
  }

  function look(): void {
    missed += 1;
    if (missed > MOST_MISSED) on.onSilence();
    else void on.ping().then(heard);
  }

  function rest(): void {
    clearInterval(timer);
  }

  return {
    listen() {
      rest();
      missed = 0;
      timer = setInterval(look, LOOK_EVERY);
    },
    heard,
    rest,
  };
}
