import type { Fold, FoldKind } from '$src/core/pour/record';
import type { Outcome } from './check';
import { type Finding, missed, near, nearBy } from './finding';
import { HELD_BACK, WHOLE_SKIN } from './heldBack';
import { computePour, pourPlan, REFERENCE_POURS } from './referencePours';

/**
 * Folds of the reference pours by an earlier code of the same scheme, 400 mesh cells: peak front speed [m/s]; first
 * moment [s] and velocity jump [m/s] of the bore that returns from the end wall; moment and speed of the impact.
 * `until` ends the run once all that has been seen [s].
 */
interface Expected {
  readonly pour: string;
  readonly gate: boolean;
  readonly peak: number;
  readonly bore?: { readonly time: number; readonly jump: number };
  readonly impact?: { readonly time: number; readonly speed: number };
  readonly until: number;
}

const EXPECTED: readonly Expected[] = [
  {
    pour: 'P2',
    gate: true,
    peak: 0.813,
    bore: { time: 1.252, jump: 1.13 },
    impact: { time: 1.25, speed: 0.82 },
    until: 1.8,
  },
  { pour: 'P3', gate: false, peak: 0.168, until: 1.9 },
  { pour: 'P4', gate: false, peak: 0.53, bore: { time: 0.45, jump: 0.57 }, until: 0.8 },
  {
    pour: 'P4',
    gate: true,
    peak: 0.512,
    bore: { time: 0.498, jump: 0.56 },
    impact: { time: 0.488, speed: 0.52 },
    until: 0.9,
  },
  { pour: 'P5', gate: true, peak: 0.69, bore: { time: 2.962, jump: 0.97 }, until: 3.6 },
];

const SPEED = 0.08;
const MOMENT = 0.02;
/** Counts, moments and speeds of the folds, against the earlier code. */
export function pourFolds(): Outcome {
  return { findings: EXPECTED.flatMap(foldsOfOne), plots: [] };
}

function foldsOfOne({ pour, gate, peak, bore, impact, until }: Expected): Finding[] {
  const reference = REFERENCE_POURS.find(({ name }) => name === pour)!;
  const { folds, figures } = computePour(pourPlan(reference, 400, gate), (time) => time > until);
  const what = `${pour}, gate ${gate ? 'on' : 'off'}`;
  const of = (kind: FoldKind): readonly Fold[] => folds.filter((fold) => fold.kind === kind);
  const returns = of('return wave');
  const found: Finding[] = [
    speed(`peak front speed, ${what}`, pour, peak, figures.peakFrontSpeed!),
    nearBy(`return waves, ${what}`, bore ? 1 : 0, returns.length, 0, ''),
  ];
  if (bore && returns[0]) {
    found.push(moment(`return wave first seen, ${what}`, pour, gate, bore.time, returns[0].time));
    found.push(
      speed(`velocity jump of the return wave, ${what}`, pour, bore.jump, returns[0].severity.value),
    );
  }
  const [struck] = of('end impact');
  if (impact && struck) {
    found.push(moment(`end wall struck, ${what}`, pour, gate, impact.time, struck.time));
    found.push(near(`speed at the end wall, ${what} [m/s]`, impact.speed, struck.severity.value, SPEED));
  }
  return found;
}

function moment(what: string, pour: string, gate: boolean, expected: number, found: number): Finding {
  if (!gate) return nearBy(what, expected, found, MOMENT, 's');
  const text = `${what}: ${found.toFixed(3)} s for ${expected} s, off by`;
  return missed(text, Math.abs(found - expected), MOMENT, HELD_BACK[pour]!, 's', WHOLE_SKIN);
}

/** Slow and thin over a lip, P5 is held most by its skin. */
function speed(what: string, pour: string, expected: number, found: number): Finding {
  if (pour !== 'P5') return near(`${what} [m/s]`, expected, found, SPEED);
  const text = `${what}: ${found.toFixed(3)} m/s for ${expected} m/s, off by`;
  return missed(text, Math.abs(found / expected - 1), SPEED, 0.22, '', WHOLE_SKIN);
}
