import type { PourPlan } from '$src/core/pour/plan';
import { axisIndex } from './grid';
import { type MapAnswer, mapAnswer } from './mapAnswer';
import { lineFrom } from './mapLine';
import type { Margin } from './margins';
import { namedAxes } from './namedAxes';
import { planAt } from './planAt';
import { settingNamed } from './settings';
import type { FoundByStudy } from './soundFinding';
import type { NamedAxis, StudyResults } from './studyFile';

/** A study of another pour, as far as it was computed. */
export interface StudyOfAnother {
  /** The pour it varies. */
  readonly plan: PourPlan;
  readonly axes: readonly NamedAxis[];
  readonly results: StudyResults;
  readonly spreads?: readonly number[];
}

/**
 * What a study of another pour has found of this one; null when it does not speak of it. It does where the two differ
 * in nothing but what it varies, and this one lies within what it looked at. It has poured no lines through this
 * pour, so a range is told to the last point of the study that is sound, and no nearer to the edge.
 */
export function alsoCovered(study: StudyOfAnother, plan: PourPlan): FoundByStudy | null {
  const axes = axesAt(study, plan);
  if (!axes) return null;
  const { results, spreads = [] } = study;
  const answer = mapAnswer(axes, results);
  if (!answer) return { axes, margins: null, setRegion: null, spreads };
  const setRegion = answer.regions[nearest(axes, answer)]!;
  const margins = setRegion === 'sound' ? axes.flatMap((_, axis) => marginsTo(axes, answer, axis)) : null;
  return { axes, margins, setRegion, spreads };
}

/** Whether a study of another pour has something to say of this one, known before anything is poured. */
export const speaksOf = (study: Pick<StudyOfAnother, 'plan' | 'axes'>, plan: PourPlan): boolean =>
  axesAt(study, plan) !== null;

/** The study's axes with this pour's values; null where it is another pour, or lies outside. */
function axesAt(
  { plan: base, axes }: Pick<StudyOfAnother, 'plan' | 'axes'>,
  plan: PourPlan,
): NamedAxis[] | null {
  if (!axes.every(({ setting }) => settingNamed(plan, setting) && settingNamed(base, setting))) return null;
  const own = namedAxes(axes, plan);
  if (!own.every(isWithin)) return null;
  const at = planAt(base, Object.fromEntries(own.map(({ setting, setPoint }) => [setting, setPoint!])));
  return 'plan' in at && isAlike(poured(at.plan), poured(plan)) ? own : null;
}

function isWithin({ from, to, setPoint }: NamedAxis): boolean {
  const room = Math.abs(to - from) * 1e-9;
  return setPoint !== null && setPoint >= Math.min(from, to) - room && setPoint <= Math.max(from, to) + room;
}

/** What is poured, whatever mesh it is computed on. */
const poured = ({ computation: _, ...rest }: PourPlan): unknown => rest;

/** Plans by way of cells and of a study differ in the last digits. */
const SAME = 1e-6;

function isAlike(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b)) + 1e-12;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
  return [...new Set([...Object.keys(left), ...Object.keys(right)])].every((key) =>
    isAlike(left[key], right[key]),
  );
}

/** The point of the study nearest to this pour. */
function nearest(axes: readonly NamedAxis[], { grid }: MapAnswer): number {
  const [across, up] = axes.map((axis) => Math.round(axisIndex(axis, axis.setPoint!)));
  return across! + (up ?? 0) * grid.columns;
}

/** Both ways along one axis to the last point that is sound. */
function marginsTo(axes: readonly NamedAxis[], answer: MapAnswer, axis: number): Margin[] {
  return ([-1, 1] as const).map((direction) => {
    const line = lineFrom(axes, answer, axis, direction);
    const first = line.findIndex(({ region }) => region !== 'sound');
    const set = axes[axis]!.setPoint!;
    const limit = line[(first < 0 ? line.length : first) - 1]?.value ?? set;
    const meets = line[first]?.region ?? null;
    return { axis, direction, limit, distance: meets === null ? null : Math.abs(limit - set), meets };
  });
}
