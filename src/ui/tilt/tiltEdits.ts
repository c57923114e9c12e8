import { withOpening } from '$src/core/fit/settings';
import { asStages, type StagedTilt } from '$src/core/tilt/asStages';
import { endOf } from '$src/core/tilt/endOf';
import { FRONT_LED_SHARE } from '$src/core/tilt/frontLed';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { motionOf } from '$src/core/tilt/motionOf';
import { LEAST_TURN } from '$src/core/tilt/range';
import type {
  FrontLedTilt,
  Knot,
  KnotTilt,
  MachineTilt,
  PlainTilt,
  ProgrammedTilt,
  Stage,
  Tilt,
} from '$src/core/tilt/tilt';
import { stagesOf, turnsOf } from '$src/core/tilt/turns';
import { fromDegrees } from '$src/core/units';

type SteadyTilt = Extract<ProgrammedTilt, { readonly kind: 'steady' }>;

/**
 * The same turn, told the other way. A staged tilt of several stages becomes steady at its mean rate. None becomes
 * measured by being called so: that is the tilt as it was measured before, or this one unchanged as long as none was.
 * @param found what a front-led tilt came to in its pour; null when that is not known yet
 * @param kept what was typed for a kind before, see `keptOf`
 */
export function asKind(tilt: Tilt, kind: Tilt['kind'], found: KnotTilt | null = null, kept: Kept = {}): Tilt {
  if (tilt.kind === kind) return tilt;
  const plain = tilt.kind === 'front-led' ? (found ?? slowHand(tilt)) : tilt;
  switch (kind) {
    case 'front-led':
      return asFrontLed(plain, kept);
    case 'machine':
      return asMachine(plain, kept);
    case 'measured':
      return kept.measured ? { ...kept.measured, limits: tilt.limits } : tilt;
    case 'drawn':
      return { ...asDrawn(plain), kind };
    default:
      if (!('smoothing' in tilt)) {
        const typed = typedBefore(plain, kind, kept);
        if (typed) return 'end' in tilt && typed.kind === 'steady' ? { ...typed, end: tilt.end } : typed;
      }
      return asProgrammed('smoothing' in plain ? plain : asStages(plain), kind);
  }
}

/** What one kind asks for and no other holds: there again for whoever comes back to that kind. */
export interface Kept {
  readonly frontLed?: Pick<FrontLedTilt, 'share' | 'homeWithin'>;
  readonly machine?: MachineTilt['machine'];
  readonly measured?: KnotTilt;
  readonly steady?: Pick<SteadyTilt, 'rate' | 'smoothing'>;
  readonly staged?: Pick<StagedTilt, 'stages' | 'smoothing'>;
}

/** What is kept once this tilt is left. */
export function keptOf(tilt: Tilt, before: Kept): Kept {
  if (tilt.kind === 'machine') return { ...before, machine: tilt.machine };
  if (tilt.kind === 'measured') return { ...before, measured: tilt };
  if (tilt.kind === 'steady') return { ...before, steady: { rate: tilt.rate, smoothing: tilt.smoothing } };
  if (tilt.kind === 'staged')
    return { ...before, staged: { stages: tilt.stages, smoothing: tilt.smoothing } };
  if (tilt.kind !== 'front-led') return before;
  return { ...before, frontLed: { share: tilt.share, homeWithin: tilt.homeWithin } };
}

/** The tilt as it was typed for this kind, from where the body starts now; null when nothing was, or it starts below. */
function typedBefore(tilt: PlainTilt, kind: ProgrammedTilt['kind'], kept: Kept): ProgrammedTilt | null {
  const { start, limits } = tilt;
  if (kind === 'steady')
    return kept.steady ? { kind, start, end: endOf(tilt), limits, ...kept.steady } : null;
  const first = kept.staged?.stages[0];
  return kept.staged && first && first.to < start ? { kind, start, limits, ...kept.staged } : null;
}

const asFrontLed = (tilt: PlainTilt, { frontLed }: Kept): FrontLedTilt => ({
  kind: 'front-led',
  start: tilt.start,
  end: endOf(tilt),
  limits: tilt.limits,
  ...(frontLed ?? { share: FRONT_LED_SHARE, homeWithin: null }),
});

/** A front-led tilt that no pour has worked out yet: even, as a careful hand would turn it. */
const slowHand = ({ start, end, limits }: FrontLedTilt): StagedTilt => ({
  kind: 'staged',
  start,
  limits,
  smoothing: 0.2,
  stages: [{ to: end, rate: SLOW_HAND }],
});

const asMachine = (tilt: PlainTilt, { machine }: Kept): MachineTilt => ({
  kind: 'machine',
  start: tilt.start,
  end: endOf(tilt),
  limits: tilt.limits,
  machine: machine ?? withOpening(BENCH_MACHINE, FIRST_OPENING),
});

/** Turns of the valve to begin with: the bench machine then falls well within what a new tilt's machine may do. */
const FIRST_OPENING = 0.5;

/** Knots at even times, as many as a hand can drag. */
const DRAWN_KNOTS = 8;

function asDrawn(tilt: PlainTilt): KnotTilt {
  const { start, limits } = tilt;
  if (tilt.kind === 'measured' || tilt.kind === 'drawn') {
    // What is known of readings is not known of a curve that may be drawn anew.
    const { band: _, readings: __, ...rest } = tilt;
    return rest;
  }
  const motion = motionOf(tilt);
  const knots = Array.from({ length: DRAWN_KNOTS }, (_, index) => {
    const time = (motion.duration * (index + 1)) / DRAWN_KNOTS;
    return { time, inclination: motion.inclinationAt(time) };
  });
  return { kind: 'drawn', start, limits, knots, origin: '' };
}

/** What readings are put into once there are some. */
export const unread = ({ start, limits }: Tilt): KnotTilt => ({
  kind: 'measured',
  start,
  limits,
  knots: [],
  origin: '',
});

export const moveKnot = (tilt: KnotTilt, index: number, knot: Knot): KnotTilt => ({
  ...tilt,
  knots: tilt.knots.with(index, knot),
});

function asProgrammed(tilt: ProgrammedTilt, kind: ProgrammedTilt['kind']): ProgrammedTilt {
  if (tilt.kind === kind) return tilt;
  const { start, smoothing, limits } = tilt;
  if (kind === 'staged') return { kind, start, smoothing, limits, stages: stagesOf(tilt) };
  const turns = turnsOf(tilt);
  const end = turns.at(-1)?.to ?? limits.lowestEnd;
  const time = turns.reduce((sum, turn) => sum + turn.steadyTime, 0);
  return { kind, start, smoothing, limits, end, rate: orSlow((start - end) / time) };
}

export function setStage(tilt: StagedTilt, index: number, stage: Stage): StagedTilt {
  return { ...tilt, stages: tilt.stages.with(index, stage) };
}

export function removeStage(tilt: StagedTilt, index: number): StagedTilt {
  return { ...tilt, stages: tilt.stages.toSpliced(index, 1) };
}

/** A stage given by its time instead of its rate, or the other way round; the turn stays the same. */
export function togglePace(tilt: StagedTilt, index: number): StagedTilt {
  const turn = turnsOf(tilt)[index];
  if (!turn) return tilt;
  const stage = tilt.stages[index]!;
  if ('time' in stage) return setStage(tilt, index, { to: turn.to, rate: orSlow(turn.rate) });
  const time = Number.isFinite(turn.time) && turn.time > 0 ? turn.time : 1;
  return setStage(tilt, index, { to: turn.to, time });
}

/** Where a tilt is usually done: the die stands on its end. */
const ON_END = fromDegrees(-90);

/**
 * One more stage. A tilt that stops before the die stands on its end goes on to there, or as far as its machine goes;
 * of another the longest stage is split in the middle, so that the turn is the same until the new stage is changed.
 */
export function addStage(tilt: StagedTilt): StagedTilt {
  const turns = turnsOf(tilt);
  const lowest = Math.max(ON_END, tilt.limits.lowestEnd);
  const last = turns.at(-1);
  if (last && last.to - lowest >= 2 * LEAST_TURN)
    return { ...tilt, stages: [...tilt.stages, { to: lowest, rate: orSlow(last.rate) }] };
  const longest = turns.reduce(
    (best, turn, index) => (spanOf(turn) > spanOf(turns[best]!) ? index : best),
    0,
  );
  const turn = turns[longest];
  if (!turn || spanOf(turn) < 2 * LEAST_TURN) return appended(tilt);
  const middle = (turn.from + turn.to) / 2;
  const halves: Stage[] = [
    { to: middle, rate: orSlow(turn.rate) },
    { to: turn.to, rate: orSlow(turn.rate) },
  ];
  return { ...tilt, stages: tilt.stages.toSpliced(longest, 1, ...halves) };
}

/** A pace that makes no sense yet, of a stage being typed, is replaced by one that does. */
const SLOW_HAND = fromDegrees(10);
const orSlow = (rate: number): number => (Number.isFinite(rate) && rate > 0 ? rate : SLOW_HAND);

const spanOf = ({ from, to }: { readonly from: number; readonly to: number }): number => from - to;

function appended(tilt: StagedTilt): StagedTilt {
  const last = tilt.stages.at(-1)?.to ?? tilt.start;
  return { ...tilt, stages: [...tilt.stages, { to: last - fromDegrees(10), rate: SLOW_HAND }] };
}

/** One point of a tilt against time, for its chart. */
export interface TiltPoint {
  readonly time: number;
  readonly inclination: number;
  /** How quick it tips [rad/s], positive while tipping. */
  readonly rate: number;
}

/** The tilt sampled evenly over its time; the tilt must be one the machine can do. */
export function samplesOf(tilt: PlainTilt, count = 240): readonly TiltPoint[] {
  const motion = motionOf(tilt);
  return Array.from({ length: count + 1 }, (_, index) => {
    const time = (motion.duration * index) / count;
    return { time, inclination: motion.inclinationAt(time), rate: Math.abs(motion.rateAt(time)) };
  });
}

/** Where one stage gives way to the next, the start and the end among them; a machine has none between. */
export function knotsOf(tilt: PlainTilt): readonly Knot[] {
  if (tilt.kind === 'machine') return [{ time: 0, inclination: tilt.start }];
  if (!('smoothing' in tilt)) return [{ time: 0, inclination: tilt.start }, ...tilt.knots];
  let time = 0;
  const ends = turnsOf(tilt).map((turn) => {
    time += turn.time;
    return { time, inclination: turn.to };
  });
  return [{ time: 0, inclination: tilt.start }, ...ends];
}
