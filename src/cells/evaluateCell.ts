import { checkHeat } from '$src/core/heat/checkHeat';
import { checkPouring } from '$src/core/heat/checkPouring';
import { checkThermal } from '$src/core/heat/checkThermal';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import { type Ladling, shareThatLeaves } from '$src/core/heat/ladling';
import type { Issue } from '$src/core/issue';
import { checkMetal } from '$src/core/metal/checkMetal';
import { liquidOf } from '$src/core/metal/liquidOf';
import type { Metal } from '$src/core/metal/metal';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { ladledMetal } from '$src/core/pour/ladledMetal';
import type { Computation, PourPlan } from '$src/core/pour/plan';
import { planHash } from '$src/core/pour/planHash';
import { checkSection } from '$src/core/section/checkSection';
import type { Section } from '$src/core/section/section';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { endOf } from '$src/core/tilt/endOf';
import type { Tilt } from '$src/core/tilt/tilt';
import { checkTeachersAnswers, type TeachersAnswers } from '$src/report/guess/teachersAnswers';
import type { Study } from '$src/report/study/study';
import { chargeValue } from './chargeValue';
import { checkCastings } from './checkCastings';
import { checkComputation } from './checkComputation';
import { checkStudy } from './checkStudy';
import type { Evaluation } from './evaluate';
import { hindrance } from './hindrance';
import type {
  CastingsCell,
  Cell,
  CellId,
  ChargeCell,
  CompareCell,
  GuessCell,
  NoteCell,
  PourCell,
  StudyCell,
} from './kinds';
import { remember } from './remember';

/** What has been worked out before: all cells by id, and what those needed by this one came to. */
export interface Known {
  readonly cells: ReadonlyMap<CellId, Cell>;
  readonly evaluations: ReadonlyMap<CellId, Evaluation>;
}

const READY: Evaluation = { state: 'ready' };

const verdictOf = (issues: readonly Issue[]): Evaluation =>
  issues.length === 0 ? READY : { state: 'wrong input', issues };
const sectionVerdict = remember((section: Section) => verdictOf(checkSection(section)));
const metalVerdict = remember((metal: Metal) => {
  const issues = checkMetal(metal);
  return verdictOf(issues.length > 0 ? issues : [...checkThermal(metal), ...checkPouring(metal)]);
});
const tiltVerdict = remember((tilt: Tilt) => verdictOf(checkTilt(tilt).issues));

/** What one cell comes to, given what the cells it needs came to. */
export function evaluateCell(cell: Cell, known: Known): Evaluation {
  switch (cell.kind) {
    case 'note':
      return evaluateNote(cell, known);
    case 'section':
      return sectionVerdict(cell.section);
    case 'metal':
      return metalVerdict(cell.metal);
    case 'tilt':
      return tiltVerdict(cell.tilt);
    case 'charge':
      return hindrance(cell, known) ?? evaluateCharge(cell, known);
    case 'pour':
      return hindrance(cell, known) ?? evaluatePour(cell, known);
    case 'compare':
      return hindrance(cell, known) ?? evaluateCompare(cell);
    case 'study':
      return hindrance(cell, known) ?? evaluateStudy(cell, known);
    case 'shop card':
      return hindrance(cell, known) ?? READY;
    case 'castings':
      return evaluateCastings(cell, known);
    case 'guess':
      return hindrance(cell, known) ?? evaluateGuess(cell);
  }
}

const NO_SUCH_GUESS: Evaluation = {
  state: 'wrong input',
  issues: [
    {
      path: 'after',
      message: 'The guess that this note waits for is not in the book.',
      remedy: 'Choose another guess, or let the note be shown at once.',
    },
  ],
};

function evaluateNote({ after }: NoteCell, { cells }: Known): Evaluation {
  return after === undefined || cells.get(after)?.kind === 'guess' ? READY : NO_SUCH_GUESS;
}

/** Of a tilt only the two ends count: how it turns between them may change without working this out again. */
const chargeEvaluation = remember((...given: Parameters<typeof chargeValue>): Evaluation => {
  const result = chargeValue(...given);
  return 'value' in result
    ? { state: 'ready', charge: result.value }
    : { state: 'wrong input', issues: result.issues };
});

function evaluateCharge(cell: ChargeCell, known: Known): Evaluation {
  const section = taken(known, cell.section, 'section').section;
  const { metal } = taken(known, cell.metal, 'metal');
  const { tilt } = taken(known, cell.tilt, 'tilt');
  return chargeEvaluation(section, metal, tilt.start, endOf(tilt), cell.charge, cell.ladling ?? null);
}

const pourEvaluation = remember(
  (
    section: Section,
    metal: Metal,
    tilt: Tilt,
    computation: Computation,
    volume: number,
    ladling: Ladling | null,
  ): Evaluation => {
    const issues = checkComputation(computation);
    if (issues.length > 0) return { state: 'wrong input', issues };
    const heat = heatAtTilt(metal, section, volume, tilt.start, ladling);
    const wrong = heat ? checkHeat(heat) : [];
    if (wrong.length > 0) return { state: 'wrong input', issues: wrong };
    const plan: PourPlan = { section, liquid: liquidOf(metal), volume, tilt, computation, heat };
    return { state: 'needs a run', plan, planHash: planHash(plan) };
  },
);

/** Heat of a pour with what the wait in the basin took from it. */
function heatAtTilt(
  metal: Metal,
  section: Section,
  volume: number,
  start: number,
  ladling: Ladling | null,
): HeatPlan | null {
  const heat = heatPlanOf(metal, section);
  if (!heat || !ladling || checkHeat(heat).length > 0) return heat;
  const { wait } = ladledMetal(section, heat, volume, start, ladling, metal);
  return { ...heat, startTemperature: wait!.temperature };
}

function evaluatePour(cell: PourCell, known: Known): Evaluation {
  const section = taken(known, cell.section, 'section').section;
  const { metal } = taken(known, cell.metal, 'metal');
  const { tilt } = taken(known, cell.tilt, 'tilt');
  const { charge, ladling = null } = taken(known, cell.charge, 'charge');
  const evaluation = known.evaluations.get(cell.charge!);
  if (evaluation?.state !== 'ready' || !('charge' in evaluation)) {
    throw new Error(`Charge ${cell.charge} is ${evaluation?.state}, expected ready.`);
  }
  // A charge by mass stays that mass when it is poured in another metal; a level or a head fixes the volume.
  const share = ladling ? shareThatLeaves(ladling) : 1;
  const volume =
    charge.by === 'mass' ? (charge.mass * share) / metal.density.value : evaluation.charge.volume;
  return pourEvaluation(section, metal, tilt, cell.computation, volume, ladling);
}

const TOO_FEW_POURS: Evaluation = {
  state: 'wrong input',
  issues: [
    {
      path: 'pours',
      message: 'Fewer than two pours are chosen.',
      remedy: 'Choose two or more pours to compare.',
    },
  ],
};

function evaluateCompare(cell: CompareCell): Evaluation {
  return new Set(cell.pours).size < 2 ? TOO_FEW_POURS : READY;
}

const studyEvaluation = remember(
  (plan: PourPlan, study: Study): Evaluation => verdictOf(checkStudy(study, plan)),
);

function evaluateStudy(cell: StudyCell, known: Known): Evaluation {
  const pour = known.evaluations.get(cell.pour!);
  if (pour?.state !== 'needs a run')
    throw new Error(`Pour ${cell.pour} is ${pour?.state}, expected needs a run.`);
  return studyEvaluation(pour.plan, cell.study);
}

const castingsVerdict = remember((_: CastingsCell, issues: string) =>
  verdictOf(JSON.parse(issues) as Issue[]),
);

/** A log of what was poured stands by itself: a pour that has gone wrong since does not block it. */
function evaluateCastings(cell: CastingsCell, { cells }: Known): Evaluation {
  return castingsVerdict(cell, JSON.stringify(checkCastings(cell.castings, cells)));
}

const NO_POUR: Evaluation = {
  state: 'wrong input',
  issues: [{ path: 'pours', message: 'No pour is chosen.', remedy: 'Choose the pour to guess about.' }],
};
const ONE_POUR: Evaluation = {
  state: 'wrong input',
  issues: [
    {
      path: 'pours',
      message: 'With one pour there is nothing to choose from.',
      remedy: 'Choose two pours or more, or ask for something else.',
    },
  ],
};

const ownVerdict = remember((own: TeachersAnswers) => verdictOf(checkTeachersAnswers(own)));
const UNWRITTEN = verdictOf(checkTeachersAnswers(null));

function evaluateGuess({ pours, ask, own }: GuessCell): Evaluation {
  if (ask === 'own answers') return own ? ownVerdict(own) : UNWRITTEN;
  if (pours.length === 0) return NO_POUR;
  return ask === 'quickest' && pours.length < 2 ? ONE_POUR : READY;
}

/** The referenced cell, which `hindrance` has seen to be there and of that kind. */
function taken<K extends Cell['kind']>(known: Known, id: CellId | null, kind: K): Extract<Cell, { kind: K }> {
  const cell = id === null ? undefined : known.cells.get(id);
  if (cell?.kind !== kind) throw new Error(`Cell ${id} is ${cell?.kind}, expected a ${kind}.`);
  return cell as Extract<Cell, { kind: K }>;
}
