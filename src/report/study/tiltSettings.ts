import { SHARE_RANGE } from '$src/core/tilt/checkFrontLed';
import { endOf } from '$src/core/tilt/endOf';
import { OIL_TEMPERATURE } from '$src/core/tilt/machine/checkMachine';
import { motionOf } from '$src/core/tilt/motionOf';
import { INCLINATION_RANGE, LEAST_TURN, RATE_RANGE } from '$src/core/tilt/range';
import type { FrontLedTilt, KnotTilt, MachineTilt, Stage, Tilt } from '$src/core/tilt/tilt';
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

/** A setting of some kinds of tilt; the others have none such. */
function ofTilt<T extends Tilt>(
  isOne: (tilt: Tilt) => tilt is T,
  read: (tilt: T) => number,
  change: (tilt: T, value: number) => T | null,
): Part {
  return {
    read: ({ tilt }) => (isOne(tilt) ? read(tilt) : null),
    apply: (plan, value) => {
      const tilt = isOne(plan.tilt) ? change(plan.tilt, value) : null;
      return tilt && { ...plan, tilt };
    },
  };
}

const isKnots = (tilt: Tilt): tilt is KnotTilt => tilt.kind === 'drawn' || tilt.kind === 'measured';
const isLed = (tilt: Tilt): tilt is FrontLedTilt => tilt.kind === 'front-led';
/** Machines set by an opening; one set by Kv has no turns. */
const isTurned = (tilt: Tilt): tilt is MachineTilt =>
  tilt.kind === 'machine' && tilt.machine.valve.by === 'turns';
const isMachine = (tilt: Tilt): tilt is MachineTilt => tilt.kind === 'machine';
const isAny = (_: Tilt): _ is Tilt => true;
const hasEnd = (tilt: Tilt): tilt is Exclude<Tilt, KnotTilt> => !isKnots(tilt);
const hasPace = (tilt: Tilt): tilt is Programmed | KnotTilt => isProgrammed(tilt) || isKnots(tilt);

/** Knots from another start to the same end, each turn in its share. */
function knotsFrom(tilt: KnotTilt, start: number): KnotTilt {
  const end = endOf(tilt);
  const by = (start - end) / (tilt.start - end);
  const knots = tilt.knots.map(({ time, inclination }) => ({
    time,
    inclination: end + (inclination - end) * by,
  }));
  return { ...tilt, start, knots };
}

/** Knots in another time, each in its share. */
function knotsIn(tilt: KnotTilt, time: number): KnotTilt {
  const by = time / tilt.knots.at(-1)!.time;
  return { ...tilt, knots: tilt.knots.map((knot) => ({ ...knot, time: knot.time * by })) };
}

/** Whole turn over whole time: what a measured tilt has for a rate. */
const meanRate = (tilt: KnotTilt): number => (tilt.start - endOf(tilt)) / tilt.knots.at(-1)!.time;

function startedAt(tilt: Tilt, start: number): Tilt {
  if (isProgrammed(tilt)) return startAt(tilt, start);
  return isKnots(tilt) ? knotsFrom(tilt, start) : { ...tilt, start };
}

function opened(tilt: MachineTilt, open: number): MachineTilt {
  const { valve } = tilt.machine;
  return valve.by === 'Kv' ? tilt : { ...tilt, machine: { ...tilt.machine, valve: { ...valve, open } } };
}

function oiledAt(tilt: MachineTilt, temperature: number): MachineTilt {
  const { machine } = tilt;
  return { ...tilt, machine: { ...machine, oil: { ...machine.oil, temperature } } };
}

const openOf = ({ machine: { valve } }: MachineTilt): number => (valve.by === 'Kv' ? 0 : valve.open);
const angles = { least: INCLINATION_RANGE.lowest, most: INCLINATION_RANGE.highest };

/**
 * Start, end and pace of a tilt. With a staged tilt, rate and time quicken or slow all stages alike; with a drawn or
 * measured one the rate is that of the whole turn. A machine is set by its valve and by how warm its oil is, a front-led tilt by its share.
 */
export const TILT_SETTINGS: readonly Setting[] = [
  {
    id: 'tilt.start',
    name: 'start angle',
    quantity: 'angle',
    group: 'tilt',
    ...angles,
    ...ofTilt(isAny, (tilt) => tilt.start, startedAt),
  },
  {
    id: 'tilt.end',
    name: 'end angle',
    quantity: 'angle',
    group: 'tilt',
    ...angles,
    ...ofTilt(hasEnd, endOf, (tilt, end) => (isProgrammed(tilt) ? endAt(tilt, end) : { ...tilt, end })),
  },
  {
    id: 'tilt.time',
    name: 'tilt time',
    quantity: 'time',
    group: 'pace',
    ...TIME_RANGE,
    ...ofTilt(
      hasPace,
      (tilt) => motionOf(tilt).duration,
      (tilt, time) => (isKnots(tilt) ? knotsIn(tilt, time) : inTime(tilt, time)),
    ),
  },
  {
    id: 'tilt.rate',
    name: 'tilt rate',
    quantity: 'rate',
    group: 'pace',
    least: RATE_RANGE.slowest,
    most: RATE_RANGE.quickest,
    ...ofTilt(
      hasPace,
      (tilt) => (isKnots(tilt) ? meanRate(tilt) : quickest(tilt)),
      (tilt, rate) => (isKnots(tilt) ? knotsIn(tilt, (tilt.start - endOf(tilt)) / rate) : atRate(tilt, rate)),
    ),
  },
  {
    id: 'tilt.share',
    name: 'front speed wanted, of critical',
    quantity: 'share',
    group: 'pace',
    ...SHARE_RANGE,
    ...ofTilt(
      isLed,
      (tilt) => tilt.share,
      (tilt, share) => ({ ...tilt, share }),
    ),
  },
  {
    id: 'tilt.valve',
    name: 'valve opening',
    quantity: 'turns',
    group: 'pace',
    least: 0,
    most: 50,
    ...ofTilt(isTurned, openOf, opened),
  },
  {
    id: 'tilt.oil',
    name: 'oil temperature',
    quantity: 'temperature',
    group: 'pace',
    ...OIL_TEMPERATURE,
    ...ofTilt(isMachine, ({ machine }) => machine.oil.temperature, oiledAt),
  },
];
