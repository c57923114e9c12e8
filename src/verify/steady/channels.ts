import type { FrictionLaw } from '$src/core/flow/conditions';
import type { Effort, Outcome } from '../check';
import { BENCH_FAST, BENCH_SLOW, MACDONALD_LONG, type Manufactured, manufacturedBed } from '../exact/steady';
import { atMost, type Finding } from '../finding';
import { climb, dischargeSpread, errorOf, plotOf, type Stream, settle } from './stream';

const manufactured = (channel: Manufactured, stretch: number, friction: FrictionLaw, passes: number) => {
  const bed = manufacturedBed(channel, 2000);
  return (cells: number): Stream => ({
    length: channel.length,
    cells,
    discharge: channel.q,
    stretch,
    friction,
    bed,
    depth: (x) => channel.depth(x),
    outlet: 'held',
    passes,
  });
};

export function longChannel(): Outcome {
  const { findings, runs, streams } = climb(
    manufactured(MACDONALD_LONG, 1, { kind: 'Manning', n: 0.033 }, 12),
    { meshes: [100, 200], errors: [8e-3, 4e-3], order: 1, spread: 4e-2 },
  );
  return {
    findings,
    plots: [
      plotOf(
        'macdonald',
        'Channel with a prescribed depth, Manning friction, 100 mesh cells',
        runs[0]!,
        streams[0]!,
      ),
    ],
  };
}

export const BENCH_STRETCH = 50;

export function benchSlow(): Outcome {
  const { findings } = climb(
    manufactured(BENCH_SLOW, BENCH_STRETCH, { kind: 'Darcy-Weisbach', f: 0.03 / BENCH_STRETCH }, 12),
    { meshes: [50, 100, 200], errors: [4e-4, 1.2e-4, 4e-5], order: 1.7, spread: 1.2e-3 },
  );
  return { findings, plots: [] };
}

/** The fast channel behind an approach that brings the stream from slow to fast, since a fast inflow needs two values. */
function withApproach(fast: Manufactured): Manufactured {
  const approach = fast.length;
  const deep = 0.035;
  const depth = (x: number) => {
    if (x >= approach) return fast.depth(x - approach);
    const s = Math.max(0, x / approach);
    const fall = 1 - s * s * s * (10 - 15 * s + 6 * s * s);
    return fast.depth(x - approach) + (deep - 0.006) * fall;
  };
  return { ...fast, length: fast.length + approach, depth };
}

export function benchFast(effort: Effort): Outcome {
  const channel = withApproach(BENCH_FAST);
  const make = manufactured(channel, BENCH_STRETCH, { kind: 'Darcy-Weisbach', f: 0.03 / BENCH_STRETCH }, 3);
  const fine = (cells: number): Stream => ({ ...make(cells), outlet: 'free', stepShare: 0.1 });
  const { findings, runs, streams } = climb(fine, {
    meshes: [100, 200],
    errors: [2e-2, 8e-3],
    order: 1.5,
    spread: 0.02,
    from: BENCH_FAST.length,
  });
  if (effort === 'report') findings.push(...atOrdinaryStep({ ...make(400), outlet: 'free' }));
  return {
    findings,
    plots: [
      plotOf(
        'bench-fast',
        'Fast stream on a bench-scale floor behind an approach, 200 mesh cells',
        runs[1]!,
        streams[1]!,
      ),
    ],
  };
}

/** On this mesh long fast streams would ripple first. */
function atOrdinaryStep(stream: Stream): Finding[] {
  const run = settle(stream);
  return [
    atMost(
      'relative L1 of depth at the ordinary step, 400 cells',
      errorOf(run, stream, BENCH_FAST.length),
      8e-3,
    ),
    atMost(
      'unevenness of the discharge at the ordinary step, 400 cells',
      dischargeSpread(run, stream.discharge),
      0.02,
    ),
  ];
}
