import { cardSource } from '$src/cells/cardSource';
import type {
  CastingsCell,
  CellId,
  CompareCell,
  GuessCell,
  PourCell,
  ShopCardCell,
  StudyCell,
} from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { METRIC, type PageUnits } from '$src/core/units';
import { castingsPart } from '$src/report/bookPage/castingsPart';
import { comparePart } from '$src/report/bookPage/comparePart';
import { guessPart } from '$src/report/bookPage/guessPart';
import { NOTHING_POURED, studyPart } from '$src/report/bookPage/studyPart';
import { paragraph } from '$src/report/bookPage/words';
import { cardHtml } from '$src/report/card/cardHtml';
import { predictedPour } from '$src/report/castings/predictedPour';
import type { Compared } from '$src/report/compare';
import type { SoundFinding } from '$src/report/study/soundFinding';
import { soundOfPour } from '$src/report/study/soundOfPour';
import { listText } from '$src/report/wording';
import { cardWarning } from '../../card/cardWarning';
import type { PageSource } from './pageSource';

const unitsOf = ({ book }: PageSource): PageUnits => book.units ?? METRIC;

const poursOf = ({ book }: PageSource): PourCell[] => book.cells.filter((cell) => cell.kind === 'pour');

/** The pours of the book among these, in the order chosen. */
const chosen = (source: PageSource, ids: readonly CellId[]): PourCell[] =>
  ids.flatMap((id) => poursOf(source).filter((pour) => pour.id === id));

/** Of the pour as it is set now. */
function currentRecord(source: PageSource, pour: CellId): PourRecord | null {
  const { record, current } = source.run(pour);
  return current ? record : null;
}

/** As `currentRecord`, and not of a coarse mesh. */
const fullRecord = (source: PageSource, pour: CellId): PourRecord | null =>
  source.run(pour).coarse ? null : currentRecord(source, pour);

function planOf({ evaluations }: PageSource, pour: CellId | undefined): PourPlan | null {
  const evaluation = pour === undefined ? null : evaluations.get(pour);
  return evaluation?.state === 'needs a run' ? evaluation.plan : null;
}

const noted = (text: string): string => paragraph(text, METRIC);

export function compareBody(source: PageSource, cell: CompareCell): string {
  const pours = chosen(source, cell.pours);
  const compared = pours.flatMap(({ id, name, metal }): Compared[] => {
    const record = currentRecord(source, id);
    const own = source.book.cells.find((one) => one.id === metal);
    return record ? [{ name, record, ...(own && { metal: own.name }) }] : [];
  });
  const known = new Set(compared.map(({ name }) => name));
  const missing = pours.map(({ name }) => name).filter((name) => !known.has(name));
  const rough = pours.filter(({ id, name }) => {
    const { coarse, state } = source.run(id);
    return known.has(name) && (coarse || state === 'stopped');
  });
  return [
    missing.length > 0 ? noted(`Not computed when the page was saved: ${listText(missing)}.`) : '',
    rough.length > 0
      ? noted(
          `Not the last word on ${listText(rough.map(({ name }) => name))}: a coarse run, or one that was stopped.`,
        )
      : '',
    compared.length > 1
      ? comparePart(compared, unitsOf(source))
      : noted('There are no two pours to set side by side.'),
  ].join('\n');
}

export function studyBody(source: PageSource, cell: StudyCell, id: string): string {
  const kept = source.study(cell);
  return kept ? studyPart(kept, id, unitsOf(source)) : noted(NOTHING_POURED);
}

/** The card as it would be printed; one whose pour has been changed since is shown with its warning. */
export function cardBody(source: PageSource, cell: ShopCardCell, id: string): string {
  const [pour] = cell.pour === null ? [] : chosen(source, [cell.pour]);
  const evaluation = source.evaluations.get(cell.id);
  const run = pour ? source.run(pour.id) : null;
  if (!pour || !run?.record || !evaluation)
    return noted('The pour of this card had not been run when the page was saved.');
  const { book, evaluations } = source;
  const warning = cardWarning(run, evaluation);
  const sound = soundOf(source, pour.id);
  const made = cardSource(book, evaluations, pour, cell, { record: run.record, warning, sound });
  return made ? cardHtml(made, id) : noted('The pour of this card has no section or metal.');
}

function soundOf(source: PageSource, pour: CellId): SoundFinding {
  const studies = source.book.cells.filter((cell) => cell.kind === 'study');
  return soundOfPour(
    planOf(source, pour),
    studies.map((study) => {
      const known = source.study(study);
      return { isOwn: study.pour === pour, known, isOld: known?.isOld ?? false };
    }),
  );
}

export function castingsBody(source: PageSource, cell: CastingsCell): string {
  if (source.evaluations.get(cell.id)?.state !== 'ready')
    return noted('Something in this log was not in order when the page was saved.');
  const pours = poursOf(source).map(({ id, name }) => ({ id, name, plan: planOf(source, id) }));
  const predicted = pours.flatMap((pour) => {
    const record = fullRecord(source, pour.id);
    return record ? [predictedPour(pour, record)] : [];
  });
  const { castings, counted, against } = cell;
  return castingsPart({ castings, counted, against, pours, predicted }, unitsOf(source));
}

/** What the pours of a guess came to, as they are set now; fewer than the pours while some are not computed. */
export const guessRecords = (source: PageSource, { pours }: GuessCell): PourRecord[] =>
  chosen(source, pours).flatMap(({ id }) => fullRecord(source, id) ?? []);

export function guessBody(source: PageSource, cell: GuessCell): string {
  const pours = chosen(source, cell.pours);
  const plan = planOf(source, pours[0]?.id);
  const records = guessRecords(source, cell);
  const { question, ask, own = null, drawn, picked, given } = cell;
  return guessPart({ question, ask, own, pours, drawn, picked, given, plan, records }, unitsOf(source));
}
