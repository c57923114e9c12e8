import type { Outcome } from '../check';
import { chokedDischarge, throatDepth, throatWidth } from '../exact/steady';
import { atLeast, atMost, missed, near } from '../finding';
import { fittedOrder } from '../measure';
import { dischargeSpread, errorOf, plotOf, RIPPLES, type Stream, settle } from './stream';

const throat =
  (discharge: number, chokes: boolean) =>
  (cells: number): Stream => ({
    length: 1,
    cells,
    discharge,
    stretch: 1,
    width: throatWidth,
    depth: throatDepth(discharge, chokes),
    outlet: chokes ? 'free' : 'held',
    passes: 10,
  });

const NEAR_CRITICAL =
  'second order as it should be, and hardly smaller with a quarter of the step; about half of the error lies within 0.1 m of the throat, where the stream comes to critical speed and a little energy makes much depth';

export function slowThroat(): Outcome {
  const meshes = [50, 100, 200];
  const streams = meshes.map(throat(0.0012, false));
  const runs = streams.map(settle);
  const errors = runs.map((run, k) => errorOf(run, streams[k]!));
  return {
    findings: [
      atMost('relative L1 of depth, 50 cells', errors[0]!, 1.2e-3),
      atMost('relative L1 of depth, 100 cells', errors[1]!, 3e-4),
      atMost('relative L1 of depth, 200 cells', errors[2]!, 8e-5),
      atLeast('observed order, fitted', fittedOrder(meshes, errors), 1.8),
      atMost('unevenness of the discharge, 200 cells', dischargeSpread(runs[2]!, 0.0012), 1e-5),
    ],
    plots: [],
  };
}

export function chokedThroat(): Outcome {
  const streams = [100, 200].map((cells) => ({ ...throat(chokedDischarge, true)(cells), stepShare: 0.25 }));
  const runs = streams.map(settle);
  const errors = runs.map((run, k) => errorOf(run, streams[k]!));
  const ordinary = throat(chokedDischarge, true)(200);
  const findings = [
    missed('relative L1 of depth, 100 cells', errors[0]!, 4e-4, 7e-4, '', NEAR_CRITICAL),
    missed('relative L1 of depth, 200 cells', errors[1]!, 1e-4, 1.7e-4, '', NEAR_CRITICAL),
    atLeast('observed order', fittedOrder([100, 200], errors), 1.8),
    atMost(
      'unevenness of the discharge, a quarter of the ordinary step, 200 cells',
      dischargeSpread(runs[1]!, chokedDischarge),
      1.2e-3,
    ),
    missed(
      'unevenness of the discharge, ordinary step, 200 cells',
      dischargeSpread(settle(ordinary), chokedDischarge),
      1.2e-3,
      2e-3,
      '',
      RIPPLES,
    ),
    near(
      'depth upstream, 200 cells',
      throatDepth(chokedDischarge, true)(0.005),
      runs[1]!.flow.depth[1]!,
      0.003,
      'm',
    ),
  ];
  return {
    findings,
    plots: [plotOf('throat', 'Stream choked by a contraction, 100 mesh cells', runs[0]!, streams[0]!)],
  };
}
