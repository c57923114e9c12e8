/** Changes wait this long for the next one before they are kept [ms]. */
const PAUSE = 600;
/** Somebody who types without a pause has the book kept this often [ms]. */
const LONGEST_WAIT = 4000;

let timer: ReturnType<typeof setTimeout> | undefined;
/** When the first of the changes was made that are not kept yet [ms]; null when all are. */
let waitsSince: number | null = null;

/** Calls `keep` after a pause in the changes, or after the longest wait. A hand that drags has the time of the page; it soon lets go. */
export function keepLater(keep: () => void, isHeld: boolean): void {
  clearTimeout(timer);
  const now = performance.now();
  waitsSince ??= now;
  const left = isHeld ? PAUSE : waitsSince + LONGEST_WAIT - now;
  timer = setTimeout(keep, Math.max(0, Math.min(PAUSE, left)));
}

/** What was changed is being kept now. */
export function endWait(): void {
  clearTimeout(timer);
  waitsSince = null;
}
