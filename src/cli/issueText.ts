import type { BookIssue } from '$src/book/bookIssues';
import type { Issue } from '$src/core/issue';

/** One issue on two lines: cell and what is wrong, then where and what to do. */
export function issueText(issue: Issue | BookIssue): string {
  const cell = 'cellName' in issue ? `${issue.cellName}: ` : '';
  const path = issue.path === '' ? '' : `${issue.path}: `;
  return `${cell}${issue.message}\n  ${path}${issue.remedy}`;
}
