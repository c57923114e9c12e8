import type { Evaluation } from '$src/cells/evaluate';
import type { Issue } from '$src/core/issue';

export function issuesOf(evaluation: Evaluation): readonly Issue[] {
  return evaluation.state === 'wrong input' ? evaluation.issues : [];
}

/** What is wrong with one field, by its path as evaluate gives it. */
export function issueAt(evaluation: Evaluation, path: string): Issue | null {
  return issuesOf(evaluation).find((issue) => issue.path === path) ?? null;
}

/** Whether nothing is wrong with a cell but that something is not there yet. */
export const isIncomplete = (evaluation: Evaluation): boolean =>
  evaluation.state === 'wrong input' && evaluation.issues.every(({ lacking }) => lacking);
