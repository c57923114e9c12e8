/** One step that can be taken back: what it was called, the value before it, and what it may merge with. */
interface Step<T> {
  readonly label: string;
  readonly before: T;
  readonly merge: string | null;
}

/** Values of one document in time. Immutable; the values share what did not change. */
export interface History<T> {
  readonly now: T;
  readonly past: readonly Step<T>[];
  /** Steps taken back, the next one to redo first; `before` holds the value to go forward to. */
  readonly future: readonly Step<T>[];
}

/** More than anyone takes back in one sitting; keeps a long day of dragging from filling memory. */
const STEPS_KEPT = 200;

export function beginHistory<T>(now: T): History<T> {
  return { now, past: [], future: [] };
}

/** Adds a step. Consecutive steps with the same merge key become one, so a drag is undone at once. */
export function recordStep<T>(history: History<T>, label: string, next: T, merge: string | null): History<T> {
  const last = history.past.at(-1);
  const merges = merge !== null && last?.merge === merge;
  const past = merges ? history.past : [...history.past, { label, before: history.now, merge }];
  return { now: next, past: past.slice(-STEPS_KEPT), future: [] };
}

/** Closes the last step: a later change with the same merge key starts a new one. */
export function settle<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (!last?.merge) return history;
  return { ...history, past: [...history.past.slice(0, -1), { ...last, merge: null }] };
}

export function undoStep<T>(history: History<T>): History<T> {
  const step = history.past.at(-1);
  if (!step) return history;
  const undone = { label: step.label, before: history.now, merge: null };
  return { now: step.before, past: history.past.slice(0, -1), future: [undone, ...history.future] };
}

export function redoStep<T>(history: History<T>): History<T> {
  const [step, ...future] = history.future;
  if (!step) return history;
  const redone = { label: step.label, before: history.now, merge: null };
  return { now: step.before, past: [...history.past, redone], future };
}
