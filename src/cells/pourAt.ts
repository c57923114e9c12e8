import { shareThatLeaves } from '$src/core/heat/ladling';
import type { Metal, Sourced } from '$src/core/metal/metal';
import type { PourPlan } from '$src/core/pour/plan';
import type { Section } from '$src/core/section/section';
import { METRIC, type PageUnits } from '$src/core/units';
import type { SettingValues } from '$src/report/study/planAt';
import { settable } from '$src/report/study/settable';
import type { SettingGroup } from '$src/report/study/setting';
import { settingNamed } from '$src/report/study/settings';
import { addCell, replaceCell } from './edit';
import type { Book, Cell, CellId, ChargeCell, PourCell } from './kinds';
import { freeId } from './names';

/** A point of a study: the settings varied and the plan they lead to. */
export interface StudyPoint {
  /** Plan of the pour as it is set. */
  readonly base: PourPlan;
  readonly values: SettingValues;
  /** Plan at the point. */
  readonly plan: PourPlan;
}

type Kind = 'section' | 'metal' | 'tilt' | 'charge';

/**
 * The kinds of cell that differ between the pour and the point. The charge goes with whatever it is reckoned in: else
 * it would tell the level of another section or another start.
 */
function changedKinds({ base, values }: StudyPoint): Set<Kind> {
  const groups = new Set<SettingGroup>(
    Object.keys(values).flatMap((id) => settingNamed(base, id)?.group ?? []),
  );
  const kinds = new Set<Kind>();
  if (groups.has('section') || isDieVaried(values)) kinds.add('section');
  if (groups.has('tilt') || groups.has('pace')) kinds.add('tilt');
  if (groups.has('metal') || 'heat.metal' in values) kinds.add('metal');
  if (groups.has('charge') || kinds.size > 0) kinds.add('charge');
  return kinds;
}

const isDieVaried = (values: SettingValues): boolean => 'heat.die' in values || 'heat.transfer' in values;

/** Coat and die temperature belong to the regions of a section. */
function heatedAs({ plan: { section, heat }, values }: StudyPoint): Section {
  if (!heat || !isDieVaried(values)) return section;
  const regions = section.regions.map((region, index) => {
    const { dieTemperature, transfer } = heat.regions[index]!;
    return { ...region, dieTemperature, transfer };
  });
  return { ...section, regions };
}

/** What a study varied is the user's own; the rest keeps its source. */
function meltedAs(metal: Metal, { liquid, heat }: PourPlan): Metal {
  const yours = (before: Sourced, value: number): Sourced =>
    before.value === value ? before : { value, source: 'from a study', confidence: 'yours' };
  return {
    ...metal,
    contactAngle: yours(metal.contactAngle, liquid.contactAngle),
    pouringTemperature: yours(
      metal.pouringTemperature,
      heat?.startTemperature ?? metal.pouringTemperature.value,
    ),
  };
}

/** What is to be ladled for the volume of the plan [kg]: skull and dross stay behind. */
const massOf = ({ volume, liquid }: PourPlan, { ladling }: ChargeCell): number =>
  (volume * liquid.density) / (ladling ? shareThatLeaves(ladling) : 1);

/**
 * A charge by level or head would follow section and tilt, so it is written as a mass that a scale can tell; one by
 * mass stays to the last digit.
 */
function chargeAt(
  cell: ChargeCell,
  { base, values, plan }: StudyPoint,
  units: PageUnits,
): ChargeCell['charge'] {
  const isVaried = Object.keys(values).some((id) => settingNamed(base, id)?.group === 'charge');
  if (cell.charge.by === 'mass' && !isVaried) return cell.charge;
  const varied = values['charge.mass'];
  if (varied !== undefined && !cell.ladling) return { by: 'mass', mass: varied };
  return { by: 'mass', mass: settable(massOf(plan, cell), 'mass', units) };
}

/** The cell as the point has it. */
function atPoint(cell: Cell, point: StudyPoint, { units = METRIC }: Book): Cell {
  const { plan } = point;
  switch (cell.kind) {
    case 'section':
      return { ...cell, section: heatedAs(point) };
    case 'tilt':
      return { ...cell, tilt: plan.tilt };
    case 'metal':
      return { ...cell, metal: meltedAs(cell.metal, plan) };
    case 'charge':
      return { ...cell, charge: chargeAt(cell, point, units) };
    default:
      return cell;
  }
}

const KINDS: readonly Kind[] = ['section', 'metal', 'tilt', 'charge'];

/**
 * The book with the point as a pour of its own at the end, with cells of its own for what differs. They are named
 * by what differs at the point, as a founder would call them ("11 mm under", "1.4 kg, 5 °/s"), and counted where that name is taken.
 */
export function withPourAt(
  book: Book,
  pourId: CellId,
  point: StudyPoint,
  name: string,
): { book: Book; id: CellId } {
  const pour = book.cells.find((cell): cell is PourCell => cell.id === pourId && cell.kind === 'pour');
  if (!pour) throw new Error(`Pour ${pourId} is not in the book.`);
  const find = (id: CellId | null) => book.cells.find((cell) => cell.id === id);
  const changed = changedKinds(point);
  const taken: Record<Kind, CellId | null> = {
    section: pour.section,
    metal: pour.metal,
    tilt: pour.tilt,
    charge: pour.charge,
  };
  const free = freePoint(book, name);
  let next = book;
  for (const kind of KINDS.filter((one) => changed.has(one))) {
    const cell = find(pour[kind]);
    if (!cell) continue;
    const id = freeId(next, kind);
    const copy = atPoint({ ...cell, id, name: pointName(free, kind) }, point, book);
    next = addCell(next, copy.kind === 'charge' ? { ...copy, ...pick(taken) } : copy);
    taken[kind] = id;
  }
  const id = freeId(next, 'pour');
  const copy: PourCell = {
    ...pour,
    ...taken,
    id,
    name: pointName(free, 'pour'),
    folded: false,
  };
  return { book: addCell(next, copy), id };
}

/** The name, or with the first number behind it, that none of the point's cells would share with a cell of the book. */
function freePoint(book: Book, name: string): string {
  const taken = new Set(book.cells.map((cell) => cell.name));
  const isTaken = (one: string) =>
    ([...KINDS, 'pour'] as const).some((kind) => taken.has(pointName(one, kind)));
  if (!isTaken(name)) return name;
  let number = 2;
  while (isTaken(`${name} (${number})`)) number++;
  return `${name} (${number})`;
}

const pointName = (name: string, kind: Kind | 'pour'): string =>
  kind === 'pour' ? name : `${name}, ${kind}`;

const pick = ({ section, metal, tilt }: Record<Kind, CellId | null>) => ({ section, metal, tilt });

/** The book with the pour's own cells set to the point; whatever else takes those cells changes with them. */
export function withPourSetTo(book: Book, pourId: CellId, point: StudyPoint): Book {
  const pour = book.cells.find((cell): cell is PourCell => cell.id === pourId && cell.kind === 'pour');
  if (!pour) return book;
  const find = (id: CellId | null) => book.cells.find((cell) => cell.id === id);
  const changed = changedKinds(point);
  const cells = KINDS.filter((kind) => changed.has(kind)).flatMap((kind) => find(pour[kind]) ?? []);
  return cells.reduce((next, cell) => replaceCell(next, atPoint(cell, point, book)), book);
}
