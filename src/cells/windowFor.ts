import { isLevelAtMost, usableLimits } from '$src/core/tilt/range';
import { METRIC, type PageUnits } from '$src/core/units';
import { basinLength } from '$src/report/study/basin';
import { POUR_WINDOW } from '$src/report/study/pourWindow';
import type { Study, StudyAxis } from '$src/report/study/study';
import type { Book, CellId } from './kinds';
import { wholeLength } from './wholeLengths';

/** How far the basin is made shorter and longer, chosen to reach as far as the changes a study tries by itself. */
const SHORTER = 0.8;
const LONGER = 1.25;

/**
 * The study to begin with around that pour: start angle against tilt time; for a machine that can only start level,
 * which has no start angles to choose among, the length of the basin against tilt time.
 */
export function windowFor(book: Book, pour: CellId | null): Study {
  const found = (id: CellId | null | undefined) => book.cells.find((cell) => cell.id === id);
  const cell = found(pour);
  if (cell?.kind !== 'pour') return POUR_WINDOW;
  const [tilt, section] = [found(cell.tilt), found(cell.section)];
  if (tilt?.kind !== 'tilt' || section?.kind !== 'section') return POUR_WINDOW;
  const unit = (book.units ?? METRIC).length;
  if (!isLevelAtMost(usableLimits(tilt.tilt.limits).highestStart)) return POUR_WINDOW;
  return { ...POUR_WINDOW, axes: [POUR_WINDOW.axes[0]!, lengths(basinLength(section.section), unit)] };
}

function lengths(length: number, unit: PageUnits['length']): StudyAxis {
  const from = wholeLength(SHORTER * length, unit);
  return { setting: 'basin.length', from, to: wholeLength(LONGER * length, unit), points: 20 };
}

/** The study with its pour chosen: one that varies what a new one does takes what suits that pour. */
export function aroundPour(book: Book, study: Study, pour: CellId | null): Study {
  const isNew = JSON.stringify(study.axes) === JSON.stringify(POUR_WINDOW.axes);
  return isNew ? windowFor(book, pour) : study;
}
