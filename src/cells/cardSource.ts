import type { PourRecord } from '$src/core/pour/record';
import { METRIC } from '$src/core/units';
import type { CardSource } from '$src/report/card/shopCard';
import { NO_STUDY, type SoundFinding } from '$src/report/study/soundFinding';
import type { Evaluation } from './evaluate';
import type { Book, Cell, CellId, PourCell, ShopCardCell } from './kinds';
import { alloyName } from './metalName';

/** What a card needs that is not in the book. */
export interface CardRun {
  readonly record: PourRecord;
  /** Why the card must not be used yet; null when it may. */
  readonly warning: string | null;
  /** What a study of the pour as it stands has found; absent = there is none. */
  readonly sound?: SoundFinding;
}

type CardWords = Pick<ShopCardCell, 'name' | 'date' | 'remark'>;

/** All a card is made from; null while its pour or what that takes is missing. */
export function cardSource(
  book: Book,
  evaluations: ReadonlyMap<CellId, Evaluation>,
  pour: PourCell,
  card: CardWords,
  { record, warning, sound = NO_STUDY }: CardRun,
): CardSource | null {
  const section = taken(book, pour.section, 'section');
  const metal = taken(book, pour.metal, 'metal');
  if (!section || !metal) return null;
  return {
    book: { title: book.title, casting: book.casting },
    card: { name: card.name, date: card.date, remark: card.remark },
    pour: { name: pour.name, section: section.name, provenDwell: pour.provenDwell ?? null },
    metal: { base: metal.metal.base, name: alloyName(metal), isOwn: metal.metal.thermal !== undefined },
    mass: massToLadle(book, evaluations, pour, record),
    ladleTemperature: metal.metal.pouringTemperature.value,
    record,
    units: book.units ?? METRIC,
    sound,
    warning,
    isHindered: evaluations.get(pour.id)?.state !== 'needs a run',
  };
}

/** As the charge says, in this pour's metal; what the solver moves is less by skull and dross. */
function massToLadle(
  book: Book,
  evaluations: ReadonlyMap<CellId, Evaluation>,
  pour: PourCell,
  { plan }: PourRecord,
): number {
  const charge = taken(book, pour.charge, 'charge');
  const moved = plan.volume * plan.liquid.density;
  if (!charge) return moved;
  if (charge.charge.by === 'mass') return charge.charge.mass;
  const evaluation = evaluations.get(charge.id);
  if (evaluation?.state !== 'ready' || !('charge' in evaluation)) return moved;
  const { mass, volume } = evaluation.charge;
  return (moved * mass) / (volume * densityOf(book, charge.metal, plan.liquid.density));
}

const densityOf = (book: Book, id: CellId | null, otherwise: number): number =>
  taken(book, id, 'metal')?.metal.density.value ?? otherwise;

function taken<K extends Cell['kind']>(
  book: Book,
  id: CellId | null,
  kind: K,
): Extract<Cell, { kind: K }> | null {
  const cell = book.cells.find((one) => one.id === id);
  return cell?.kind === kind ? (cell as Extract<Cell, { kind: K }>) : null;
}
