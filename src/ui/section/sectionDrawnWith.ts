import type { Evaluation } from '$src/cells/evaluate';
import type { Cell, CellId, ChargeCell, MetalCell, PourCell, SectionCell } from '$src/cells/kinds';
import { remember } from '$src/cells/remember';
import { fillLevelFromVolume } from '$src/core/level/fillLevel';
import type { Liquid } from '$src/core/metal/liquid';
import { liquidOf } from '$src/core/metal/liquidOf';
import { METALS } from '$src/core/metal/metals';
import { usualDieTemperature } from '$src/core/pour/heatPlanOf';
import { cavityVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { endOf } from '$src/core/tilt/endOf';
import { fromDegrees } from '$src/core/units';
import { angleText } from '$src/report/wording';

/** The stroke and the metal a section is drawn with. */
export interface DrawnWith {
  /** The charge they come from; null = no charge that takes this section gives any. */
  readonly charge: ChargeCell | null;
  /** That charge, else the pour that takes this section with a charge of another; null = assumed, see `assumed`. */
  readonly from: ChargeCell | PourCell | null;
  /** The cell that should give them, whether it does or not. */
  readonly of: CellId | null;
  readonly start: number;
  readonly end: number;
  /** [m³] */
  readonly volume: number;
  /** Dead level from the lip at the start [m]; null when it is over the lip or unknown. */
  readonly fromLip: number | null;
  readonly liquid: Liquid;
  readonly metalName: string;
  /** Of a region that says nothing of it, in that metal [K]. */
  readonly usualDie: number;
  /** What had to be assumed, in words; null when all comes from a cell. */
  readonly assumed: string | null;
}

const START = fromDegrees(30);
const END = fromDegrees(-90);
const SPARE = 1.15;

/** What is read of the book that the section stands in. */
export interface BookAround {
  charges(): readonly ChargeCell[];
  pours(): readonly PourCell[];
  metals(): readonly MetalCell[];
  cell(id: CellId | null): Cell | null;
  evaluation(id: CellId): Evaluation;
}

/** The charge cell a section is drawn with: the one it names, else the first that takes it. */
function chargeOf(charges: readonly ChargeCell[], cell: SectionCell): ChargeCell | null {
  const takers = charges.filter(({ section }) => section === cell.id);
  return takers.find(({ id }) => id === cell.drawnWith) ?? takers[0] ?? null;
}

const liquidIn = remember(liquidOf);

const isSame = (one: DrawnWith, other: DrawnWith): boolean =>
  (Object.keys(one) as (keyof DrawnWith)[]).every((key) => one[key] === other[key]);

/**
 * `section` is a good outline of the cell. `before` is what this returned last, and is returned again when it still
 * holds, so that nothing is drawn anew. While a charge gives no metal, for instance because an outline is half typed,
 * nothing that was known jumps to what would be assumed.
 */
export function drawnWith(
  around: BookAround,
  cell: SectionCell,
  section: Section,
  before: DrawnWith | null = null,
): DrawnWith {
  const now = drawnNow(around, cell, section, before);
  return before && isSame(before, now) ? before : now;
}

function drawnNow(
  around: BookAround,
  cell: SectionCell,
  section: Section,
  before: DrawnWith | null,
): DrawnWith {
  const charge = chargeOf(around.charges(), cell);
  // A section may be poured with a charge that was worked out for another: then that metal is in it.
  const source =
    charge ?? around.pours().find((pour) => pour.section === cell.id && around.cell(pour.charge)) ?? null;
  const metalCell = around.cell(source?.metal ?? null);
  const metal = metalCell?.kind === 'metal' ? metalCell.metal : (around.metals()[0]?.metal ?? METALS[0]!);
  const known = {
    liquid: liquidIn(metal),
    metalName: metal.name,
    usualDie: usualDieTemperature(metal),
    charge,
    from: source,
  };
  const given = source && givenBy(around.evaluation(source.id), section);
  if (given) return { ...known, ...given, of: source.id, assumed: null };
  const own = {
    ...known,
    charge: null,
    from: null,
    of: source?.id ?? null,
    fromLip: null,
    ...strokeOf(around, source),
  };
  const stroke = `from ${angleText(own.start)} to ${angleText(own.end)}`;
  if (source && before?.of === source.id) {
    const assumed = `${source.name} gives no metal for this: drawn ${stroke} with as much as it gave last.`;
    return { ...own, volume: before.volume, assumed };
  }
  const why = source ? `${source.name} gives no metal yet` : 'No charge takes this section yet';
  const assumed = `${why}: drawn ${stroke} with 1.15 times the cavity of ${metal.name}.`;
  return { ...own, volume: SPARE * cavityVolume(section), assumed };
}

/** Stroke and metal of a charge, or of the pour as it runs; null while neither is in order. */
function givenBy(
  evaluation: Evaluation,
  section: Section,
): Pick<DrawnWith, 'start' | 'end' | 'volume' | 'fromLip'> | null {
  if ('charge' in evaluation) {
    const { startInclination: start, endInclination: end, volume, fromLip } = evaluation.charge;
    return { start, end, volume, fromLip };
  }
  if (!('plan' in evaluation)) return null;
  const { tilt, volume } = evaluation.plan;
  const { start } = tilt;
  return { start, end: endOf(tilt), volume, fromLip: fillLevelFromVolume(section, start, volume) };
}

/** The stroke of the tilt it takes, as long as that is in order by itself; else one that most dies could have. */
function strokeOf(around: BookAround, source: ChargeCell | PourCell | null): { start: number; end: number } {
  const cell = around.cell(source?.tilt ?? null);
  if (cell?.kind !== 'tilt' || around.evaluation(cell.id).state !== 'ready')
    return { start: START, end: END };
  return { start: cell.tilt.start, end: endOf(cell.tilt) };
}
