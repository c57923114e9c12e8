import type { CellId } from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import type { Study } from '$src/report/study/study';

/** What a study was made from that was shown last; its points are kept by the hashes of their plans. */
export interface StudyAsItWas {
  readonly base: PourPlan;
  readonly study: Study;
}

const placeOf = (book: string, cell: CellId): string => `quietpour.study ${book} ${cell}`;

/** Notes in this tab's own store what a study shows, so that it is there again when the page is loaded anew. */
export function noteStudy(book: string, cell: CellId, { base, study }: StudyAsItWas): void {
  try {
    sessionStorage.setItem(placeOf(book, cell), JSON.stringify({ base, study }));
  } catch {
    // Without that store, or with no room in it, an old study is not shown after the page is loaded anew.
  }
}

/** null when none was shown in this tab, or the browser keeps nothing. */
export function studyAsItWas(book: string, cell: CellId): StudyAsItWas | null {
  try {
    const text = sessionStorage.getItem(placeOf(book, cell));
    return text === null ? null : (JSON.parse(text) as StudyAsItWas);
  } catch {
    return null;
  }
}
