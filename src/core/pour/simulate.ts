import { type PourPlan, PREVIEW_MESH_CELLS } from './plan';
import type { Band, Figures, PourRecord, Progress } from './record';
import { runPour } from './runPour';

type Run = Generator<Progress, PourRecord, { stop: boolean } | undefined>;

/** Share of the work that the pour itself is taken to be; the rest is its band. */
const OWN_SHARE = 0.9;

/**
 * Computes one pour: the run asked for, then the band of what is assumed about capillarity, on a coarse mesh. A
 * generator of progress that returns the record; the worker, the command line and the tests all loop over it.
 * `next({ stop: true })` ends it with a partial record. Runs on a preview mesh carry no band.
 * @throws RangeError when the plan is nonsense (checks for people come before, in `cells`)
 */
export function* simulate(plan: PourPlan): Run {
  const withBand = plan.computation.meshCells > PREVIEW_MESH_CELLS;
  const record = yield* scaled(runPour(plan), 0, withBand ? OWN_SHARE : 1);
  if (!withBand || record.outcome.kind === 'stopped' || record.outcome.kind === 'stopped by the user')
    return record;
  const gateOff = yield* scaled(
    runPour(coarse(plan, { capillaryGate: false })),
    OWN_SHARE,
    (1 + OWN_SHARE) / 2,
  );
  const nonWetting = yield* scaled(
    runPour(coarse(plan, { capillaryGate: true, contactAngle: Math.PI })),
    (1 + OWN_SHARE) / 2,
    1,
  );
  if (isCut(gateOff) || isCut(nonWetting)) return record;
  const band: Band = {
    gateOff: headline(gateOff),
    nonWetting: headline(nonWetting),
    meshCells: PREVIEW_MESH_CELLS,
  };
  return { ...record, band };
}

/** Passes a run's progress on as the stretch `from` to `to` of the whole. */
function* scaled(run: Run, from: number, to: number): Run {
  let step = run.next();
  while (!step.done) {
    const answer = yield { ...step.value, done: from + (to - from) * step.value.done };
    step = run.next(answer);
  }
  return step.value;
}

function coarse(plan: PourPlan, change: { capillaryGate: boolean; contactAngle?: number }): PourPlan {
  return {
    ...plan,
    heat: null,
    liquid: { ...plan.liquid, contactAngle: change.contactAngle ?? plan.liquid.contactAngle },
    computation: { ...plan.computation, meshCells: PREVIEW_MESH_CELLS, capillaryGate: change.capillaryGate },
  };
}

function isCut(record: PourRecord): boolean {
  return record.outcome.kind === 'stopped' || record.outcome.kind === 'stopped by the user';
}

function headline(record: PourRecord): Pick<Figures, 'firstFlow' | 'peakFrontSpeed' | 'arrivalTime'> {
  const { firstFlow, peakFrontSpeed, arrivalTime } = record.figures;
  return { firstFlow, peakFrontSpeed, arrivalTime };
}
