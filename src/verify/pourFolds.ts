import type { Fold, FoldKind } from '$src/core/pour/record';
import type { Outcome } from './check';
import { type Finding, missed, near, nearBy } from './finding';
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
    until: 1.6,
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
  { pour: 'P5', gate: true, peak: 0.69, bore: { time: 2.962, jump: 0.97 }, until: 3.3 },
];

const SPEED = 0.08;
const MOMENT = 0.02;
/** As for the arrivals: pours that the skin at the nose holds back by some 40 ms. */
const HELD_BACK = ['P2', 'P5'];
const NOSE = 'all of the pour is later by what its arrival is later: the skin also holds a filling nose';

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
    near(`peak front speed, ${what} [m/s]`, peak, figures.peakFrontSpeed!, SPEED),
    nearBy(`return waves, ${what}`, bore ? 1 : 0, returns.length, 0, ''),
  ];
  if (bore && returns[0]) {
    found.push(moment(`return wave first seen, ${what}`, pour, bore.time, returns[0].time));
    found.push(
      near(`velocity jump of the return wave, ${what} [m/s]`, bore.jump, returns[0].severity.value, SPEED),
    );
  }
  const [struck] = of('end impact');
  if (impact && struck) {
    found.push(moment(`end wall struck, ${what}`, pour, impact.time, struck.time));
    found.push(near(`speed at the end wall, ${what} [m/s]`, impact.speed, struck.severity.value, SPEED));
  }
  return found;
}

function moment(what: string, pour: string, expected: number, found: number): Finding {
  if (!HELD_BACK.includes(pour)) return nearBy(what, expected, found, MOMENT, 's');
  const text = `${what}: ${found.toFixed(3)} s for ${expected} s, off by`;
  return missed(text, Math.abs(found - expected), MOMENT, 0.06, 's', NOSE);
}
