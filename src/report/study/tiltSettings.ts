import { motionOf } from '$src/core/tilt/motionOf';
import { INCLINATION_RANGE, LEAST_TURN, RATE_RANGE } from '$src/core/tilt/range';
import type { Stage, Tilt } from '$src/core/tilt/tilt';
import { turnsOf } from '$src/core/tilt/turns';
import type { Setting } from './setting';

/** Quickest and slowest whole stroke that is worth asking for [s]. */
const TIME_RANGE = { least: 0.5, most: 120 } as const;

/** A tilt that a drive or a hand is asked for; one that weights and damper decide has no pace to be set. */
type Programmed = Extract<Tilt, { kind: 'steady' }> | Extract<Tilt, { kind: 'staged' }>;

const isProgrammed = (tilt: Tilt): tilt is Programmed => tilt.kind === 'steady' || tilt.kind === 'staged';

/** A start below the end of a stage leaves that stage out: the machine is past it already. */
function startAt(tilt: Programmed, start: number): Programmed {
  if (tilt.kind === 'steady') return { ...tilt, start };
  const left = tilt.stages.filter((stage) => start - stage.to >= LEAST_TURN);
  return { ...tilt, start, stages: left.length > 0 ? left : tilt.stages.slice(-1) };
}

function endAt(tilt: Programmed, end: number): Programmed {
  if (tilt.kind === 'steady') return { ...tilt, end };
  const before = tilt.stages.slice(0, -1).filter((stage) => stage.to - end >= LEAST_TURN);
  return { ...tilt, stages: [...before, { ...tilt.stages.at(-1)!, to: end }] };
}

/** Whole stroke from rest to rest in that time [s]; stages keep their shares of the steady motion. Null when smoothing leaves no time. */
function inTime(tilt: Programmed, time: number): Programmed | null {
  const steady = time - tilt.smoothing;
  const now = turnsOf(tilt).reduce((sum, turn) => sum + turn.steadyTime, 0);
  return steady > 0 && now > 0 ? quickened(tilt, now / steady) : null;
}

/** Every rate multiplied. */
function quickened(tilt: Programmed, by: number): Programmed {
  if (tilt.kind === 'steady') return { ...tilt, rate: tilt.rate * by };
  const stages = turnsOf(tilt).map(({ to, rate }): Stage => ({ to, rate: rate * by }));
  return { ...tilt, stages };
}

const quickest = (tilt: Programmed): number => Math.max(...turnsOf(tilt).map((turn) => turn.rate));

function atRate(tilt: Programmed, rate: number): Programmed | null {
  const now = quickest(tilt);
  return now > 0 ? quickened(tilt, rate / now) : null;
}

type Part = Pick<Setting, 'read' | 'apply'>;

/** A setting of programmed tilts; other tilts have none such. */
const programmed = (
  read: (tilt: Programmed) => number,
  change: (tilt: Programmed, value: number) => Programmed | null,
): Part => ({
  read: ({ tilt }) => (isProgrammed(tilt) ? read(tilt) : null),
  apply: (plan, value) => {
    const tilt = isProgrammed(plan.tilt) ? change(plan.tilt, value) : null;
    return tilt && { ...plan, tilt };
  },
});

const angles = { least: INCLINATION_RANGE.lowest, most: INCLINATION_RANGE.highest };

/** Start, end and pace of a tilt. With a staged tilt, rate and time quicken or slow all stages alike. */
export const TILT_SETTINGS: readonly Setting[] = [
  {
    id: 'tilt.start',
    name: 'start angle',
    quantity: 'angle',
    group: 'tilt',
    ...angles,
    ...programmed((tilt) => tilt.start, startAt),
  },
  {
    id: 'tilt.end',
    name: 'end angle',
    quantity: 'angle',
    group: 'tilt',
    ...angles,
    ...programmed((tilt) => motionOf(tilt).end, endAt),
  },
  {
    id: 'tilt.time',
    name: 'tilt time',
    quantity: 'time',
    group: 'pace',
    ...TIME_RANGE,
    ...programmed((tilt) => motionOf(tilt).duration, inTime),
  },
  {
    id: 'tilt.rate',
    name: 'tilt rate',
    quantity: 'rate',
    group: 'pace',
    least: RATE_RANGE.slowest,
    most: RATE_RANGE.quickest,
    ...programmed(quickest, atRate),
  },
];
