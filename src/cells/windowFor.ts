import { OIL_TEMPERATURE } from '$src/core/tilt/machine/checkMachine';
import { isLevelAtMost, usableLimits } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
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
 * The study to begin with around that pour: start angle against what makes the tilt quick or slow; for a machine that
 * can only start level, which has no start angles to choose among, the length of the basin in place of the angle.
 */
export function windowFor(book: Book, pour: CellId | null): Study {
  const found = (id: CellId | null | undefined) => book.cells.find((cell) => cell.id === id);
  const cell = found(pour);
  if (cell?.kind !== 'pour') return POUR_WINDOW;
  const [tilt, section] = [found(cell.tilt), found(cell.section)];
  if (tilt?.kind !== 'tilt' || section?.kind !== 'section') return POUR_WINDOW;
  const across = paceAxis(tilt.tilt);
  const highest = usableLimits(tilt.tilt.limits).highestStart;
  if (!isLevelAtMost(highest)) return { ...POUR_WINDOW, axes: [across, starts(highest)] };
  const unit = (book.units ?? METRIC).length;
  return { ...POUR_WINDOW, axes: [across, lengths(basinLength(section.section), unit)] };
}

const [TIMES, STARTS] = POUR_WINDOW.axes as readonly [StudyAxis, StudyAxis];
/** Colder and warmer than the oil is [K]: a morning and an afternoon. */
const OIL_SPAN = 15;

/** What makes this tilt quicker or slower: its time, the valve of a machine or its oil, the share a front is led at. */
function paceAxis(tilt: Tilt): StudyAxis {
  if (tilt.kind === 'front-led') return { ...TIMES, setting: 'tilt.share', from: 0.3, to: 1 };
  if (tilt.kind !== 'machine') return TIMES;
  const { valve, oil } = tilt.machine;
  if (valve.by === 'turns') return { ...TIMES, setting: 'tilt.valve', ...aroundOpening(valve.open) };
  const from = Math.max(OIL_TEMPERATURE.least, oil.temperature - OIL_SPAN);
  const to = Math.min(OIL_TEMPERATURE.most, oil.temperature + OIL_SPAN);
  return { ...TIMES, setting: 'tilt.oil', from, to };
}

/** From nearly shut to twice as far open, in tenths of a turn. */
function aroundOpening(open: number): { readonly from: number; readonly to: number } {
  const tenths = Math.max(2, Math.round(open * 10));
  return { from: Math.max(1, Math.round(tenths / 4)) / 10, to: (2 * tenths) / 10 };
}

/** No start is tried that the machine does not reach. */
const starts = (highest: number): StudyAxis => ({ ...STARTS, to: Math.min(STARTS.to, highest) });

function lengths(length: number, unit: PageUnits['length']): StudyAxis {
  const from = wholeLength(SHORTER * length, unit);
  return { setting: 'basin.length', from, to: wholeLength(LONGER * length, unit), points: 20 };
}

/** The study with its pour chosen: one that varies what a new one does takes what suits that pour. */
export function aroundPour(book: Book, study: Study, pour: CellId | null): Study {
  const isNew = JSON.stringify(study.axes) === JSON.stringify(POUR_WINDOW.axes);
  return isNew ? windowFor(book, pour) : study;
}
