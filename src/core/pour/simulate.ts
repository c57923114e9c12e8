import { frontLedPour } from './frontLedPour';
import { isFrontLed } from './ledByLevel';
import { type PourPlan, PREVIEW_MESH_CELLS } from './plan';
import { planHash } from './planHash';
import type { Band, Figures, PourRecord, Progress } from './record';
import { runPour } from './runPour';

type Run = Generator<Progress, PourRecord, { stop: boolean } | undefined>;

/** Share of the work that the pour itself is taken to be; the rest is its band. */
const OWN_SHARE = 0.9;
/**
 * Computes one pour: the run asked for, then the band of what is assumed about capillarity, on a coarse mesh. A
 * generator of progress that returns the record; the worker, the command line and the tests all loop over it.
 * `next({ stop: true })` ends it with a partial record. Runs on a preview mesh carry no band. A front-led tilt is
 * worked out first.
 * @throws RangeError when the plan is nonsense (checks for people come before, in `cells`)
 */
export function* simulate(plan: PourPlan): Run {
  const own = withBand(plan) ? OWN_SHARE : 1;
  if (!isFrontLed(plan)) {
    const record = yield* scaled(runPour(plan), 0, own);
    return yield* banded(record, plan);
  }
  const { tries, chosen, record } = yield* scaled(frontLedPour(plan), 0, own);
  const poured = yield* banded(record, { ...plan, tilt: tries[chosen]!.tilt });
  // The record is of the plan as asked, with how its tilt was found.
  return { ...poured, plan, planHash: planHash(plan), frontLed: { tries, chosen } };
}

const withBand = ({ computation }: PourPlan): boolean => computation.meshCells > PREVIEW_MESH_CELLS;

/** The record with its band, where one is due. */
function* banded(record: PourRecord, plan: PourPlan): Run {
  if (!withBand(plan) || isCut(record)) return record;
  const middle = (1 + OWN_SHARE) / 2;
  const gateOff = yield* scaled(runPour(coarse(plan, { capillaryGate: false })), OWN_SHARE, middle);
  const other = coarse(plan, { capillaryGate: true, contactAngle: Math.PI });
  const nonWetting = yield* scaled(runPour(other), middle, 1);
  if (isCut(gateOff) || isCut(nonWetting)) return record;
  const band: Band = {
    gateOff: headline(gateOff),
    nonWetting: headline(nonWetting),
    meshCells: PREVIEW_MESH_CELLS,
  };
  return { ...record, band };
}

/** Passes a run's progress on as the stretch `from` to `to` of the whole. */
function* scaled<T>(
  run: Generator<Progress, T, { stop: boolean } | undefined>,
  from: number,
  to: number,
): Generator<Progress, T, { stop: boolean } | undefined> {
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
