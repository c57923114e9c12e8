import { escaped } from '../drawing/paper';

/** What a class is to think about first, shown by a press; not printed unless it is shown. `body` is markup. */
export const behind = (summary: string, body: string): string =>
  `<details class="behind"><summary>${escaped(summary)}</summary>\n${body}\n</details>`;

/** Said on the press that shows a result. */
export const whatPoursDid = (pours: number): string => `Show what the ${pours === 1 ? 'pour' : 'pours'} did`;
