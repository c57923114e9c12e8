import type { Evaluation } from '$src/cells/evaluate';
import type { PourRun } from '../cellRun.svelte';

/** Why a card must not be used yet; null when it may. `evaluation` is that of the card, `run` that of its pour. */
export function cardWarning(
  run: Pick<PourRun, 'current' | 'coarse' | 'state'> | null,
  evaluation: Evaluation,
): string | null {
  if (!run || evaluation.state !== 'ready') return 'Something its pour takes is wrong: see the book.';
  if (!run.current) return 'It is out of date: the pour has been changed since.';
  if (run.coarse) return 'It comes from a coarse run: wait for the full one.';
  return run.state === 'stopped' ? 'Its run was stopped before the end.' : null;
}
