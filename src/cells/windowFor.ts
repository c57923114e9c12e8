import { edgeBetween } from '$src/core/elementary/edgeBetween';
import { levelPath } from '$src/core/level/levelPath';
import type { PourPlan } from '$src/core/pour/plan';
import { endOf } from '$src/core/tilt/endOf';
import { OIL_TEMPERATURE } from '$src/core/tilt/machine/checkMachine';
import { isLevelAtMost, usableLimits } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees, METRIC, type PageUnits } from '$src/core/units';
import { standOfPlan } from '$src/report/drawing/metalAtRest';
import { isLadledIn } from '$src/report/ladledIn';
import { basinLength } from '$src/report/study/basin';
import { POUR_WINDOW } from '$src/report/study/pourWindow';
import { settingNamed } from '$src/report/study/settings';
import type { Study, StudyAxis } from '$src/report/study/study';
import { evaluateBook } from './evaluate';
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
  const plan = readyPlan(book, cell.id);
  const across = holding(paceAxis(tilt.tilt), plan);
  const highest = usableLimits(tilt.tilt.limits).highestStart;
  if (!isLevelAtMost(highest))
    return { ...POUR_WINDOW, axes: [across, holding(heldStarts(starts(highest), plan), plan)] };
  const unit = (book.units ?? METRIC).length;
  return { ...POUR_WINDOW, axes: [across, lengths(basinLength(section.section), unit)] };
}

const [TIMES, STARTS] = POUR_WINDOW.axes as readonly [StudyAxis, StudyAxis];
/** Colder and warmer than the oil is [K]: a morning and an afternoon. */
const OIL_SPAN = 15;

/** What makes this tilt quicker or slower: its time, the valve of a machine or its oil, the share a front is led at. */
function paceAxis(tilt: Tilt): StudyAxis {
  if (tilt.kind === 'front-led') return { ...TIMES, setting: 'tilt.share', from: 0.3, to: 1 };
  if (tilt.kind !== 'machine') return times(tilt);
  const { valve, oil } = tilt.machine;
  if (valve.by === 'turns') return { ...TIMES, setting: 'tilt.valve', ...aroundOpening(valve.open) };
  const from = Math.max(OIL_TEMPERATURE.least, oil.temperature - OIL_SPAN);
  const to = Math.min(OIL_TEMPERATURE.most, oil.temperature + OIL_SPAN);
  return { ...TIMES, setting: 'tilt.oil', from, to };
}

/** Times from the quickest the machine can turn through the longest turn that is tried, in halves of a second. */
function times(tilt: Tilt): StudyAxis {
  const { highestStart, quickest } = usableLimits(tilt.limits);
  const turn = Math.min(STARTS.to, highestStart) - endOf(tilt);
  const smoothing = 'smoothing' in tilt ? tilt.smoothing : 0;
  const from = Math.ceil(2 * (turn / quickest + smoothing)) / 2;
  return from > TIMES.from && from < TIMES.to ? { ...TIMES, from } : TIMES;
}

/** From nearly shut to twice as far open, in tenths of a turn. */
function aroundOpening(open: number): { readonly from: number; readonly to: number } {
  const tenths = Math.max(2, Math.round(open * 10));
  return { from: Math.max(1, Math.round(tenths / 4)) / 10, to: (2 * tenths) / 10 };
}

/** Null while the pour is not in order. */
function readyPlan(book: Book, pour: CellId): PourPlan | null {
  const evaluation = evaluateBook(book).get(pour);
  return evaluation?.state === 'needs a run' ? evaluation.plan : null;
}

/** Starts are looked at in whole degrees. */
const WHOLE = fromDegrees(1);
/** Ends of a range are round numbers: half seconds, whole degrees, twentieths of the critical speed. */
const ROUND: Readonly<Record<string, number>> = { 'tilt.time': 0.5, 'tilt.start': WHOLE, 'tilt.share': 0.05 };
/** A time past the range has this share of it looked at beyond: the slow edge lies there. */
const BEYOND = 0.25;

/** The range widened to hold what the pour itself is set to: a study around a pour that leaves it out finds no margins of it. */
function holding(axis: StudyAxis, plan: PourPlan | null): StudyAxis {
  const own = plan && settingNamed(plan, axis.setting)?.read(plan);
  const round = ROUND[axis.setting];
  if (own === null || own === undefined || round === undefined) return axis;
  // A round number may miss its own value by the last digit.
  if (own < axis.from) return { ...axis, from: Math.min(own, Math.floor(own / round + 1e-6) * round || own) };
  if (own <= axis.to) return axis;
  const wanted = axis.setting === 'tilt.time' ? own * (1 + BEYOND) : own;
  return { ...axis, to: Math.max(own, Math.ceil(wanted / round - 1e-6) * round) };
}

/**
 * Starts from one step below the lowest at which the basin holds the charge: further down most of the metal is in the die
 * while ladling, which is no pour to judge. The level fill tells, without a run. All of them while there is no pour in order.
 */
function heldStarts(axis: StudyAxis, plan: PourPlan | null): StudyAxis {
  if (!plan) return axis;
  const lowest = lowestHeld(plan, axis);
  if (lowest === null) return axis;
  const step = (axis.to - lowest) / (axis.points - 2);
  const wanted = Math.min(lowest - step, plan.tilt.start);
  const from = Math.floor(wanted / WHOLE + 1e-6) * WHOLE;
  return from > axis.from ? { ...axis, from } : axis;
}

/** The lowest start [rad] of the range at which the basin holds the charge; null when it does at none or at all of them. */
function lowestHeld(plan: PourPlan, { from, to }: StudyAxis): number | null {
  const stand = standOfPlan(plan);
  const isHeld = (start: number): boolean =>
    !isLadledIn(levelPath(plan.section, plan.volume, start, start, stand).share[0] ?? 0);
  if (isHeld(from) || !isHeld(to)) return null;
  return edgeBetween(isHeld, to, from, WHOLE / 4);
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
