import { expect, test } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, Cell, CellId, ChargeCell, PourCell, SectionCell, TiltCell } from '$src/cells/kinds';
import { fillLevelFromVolume } from '$src/core/level/fillLevel';
import { METALS } from '$src/core/metal/metals';
import type { Section } from '$src/core/section/section';
import { taperedLever } from '$src/core/section/shapes';
import { fromDegrees } from '$src/core/units';
import { type DrawnWith, drawnWith } from '$src/ui/section/sectionDrawnWith';
import { sampleBook } from '../../book/sample';

const book = sampleBook();
const charge = book.cells.find((cell): cell is ChargeCell => cell.kind === 'charge')!;
const sectionIn = ({ cells }: Book) =>
  cells.find((cell): cell is SectionCell => cell.kind === 'section' && cell.id === charge.section)!;
const good = sectionIn(book).section;
const tilt = book.cells.find(
  (cell): cell is TiltCell => cell.kind === 'tilt' && cell.id === charge.tilt,
)!.tilt;

const withCell = (next: Cell): Book => ({
  ...book,
  cells: book.cells.map((cell) => (cell.id === next.id ? next : cell)),
});

const drawnIn = (changed: Book, before: DrawnWith | null = null): DrawnWith =>
  drawnOf(changed, sectionIn(changed), good, before).drawn;

function drawnOf(changed: Book, cell: SectionCell, section: Section, before: DrawnWith | null = null) {
  const evaluations = evaluateBook(changed);
  const around = {
    charges: () => changed.cells.filter((cell) => cell.kind === 'charge'),
    pours: () => changed.cells.filter((cell) => cell.kind === 'pour'),
    metals: () => changed.cells.filter((cell) => cell.kind === 'metal'),
    cell: (id: CellId | null) => changed.cells.find((cell) => cell.id === id) ?? null,
    evaluation: (id: CellId) => evaluations.get(id)!,
  };
  return { drawn: drawnWith(around, cell, section, before), evaluations };
}

/** The outline as it stands while a number is half typed: back wall and basin crossed. */
const halfTyped = withCell({
  ...sectionIn(book),
  section: { ...good, floor: good.floor.map((p, i) => (i === 1 ? { ...p, x: -1 } : p)) },
});

test('while an outline is half typed, stroke and metal stay as they were', () => {
  const whole = drawnIn(book);
  expect(whole.charge?.id).toBe(charge.id);
  const broken = drawnIn(halfTyped, whole);
  expect(broken.charge).toBeNull();
  expect([broken.start, broken.end, broken.volume]).toEqual([whole.start, whole.end, whole.volume]);
  expect(broken.assumed).toContain('as much as it gave last');
  expect(drawnIn(halfTyped, broken).volume).toBe(whole.volume);
});

test('a charge that never gave metal leaves the stroke of its tilt', () => {
  const broken = drawnIn(halfTyped);
  expect(broken.start).toBe(tilt.start);
  expect(broken.assumed).toContain('1.15 times the cavity');
});

test('without a charge the section is drawn from +30°, and says so', () => {
  const alone = drawnIn({ ...book, cells: book.cells.filter(({ kind }) => kind !== 'charge') });
  expect(alone.start).toBeCloseTo(fromDegrees(30), 12);
  expect(alone.assumed).toContain('No charge takes this section yet: drawn from +30.0° to −90.0°');
});

test('without a charge the weight is of the metal of the book', () => {
  const cells = book.cells.flatMap((cell): Cell[] => {
    if (cell.kind === 'charge') return [];
    return cell.kind === 'metal' ? [{ ...cell, metal: { ...METALS[2]! } }] : [cell];
  });
  const alone = drawnIn({ ...book, cells });
  expect(alone.metalName).toBe(METALS[2]!.name);
  expect(alone.liquid.density).toBe(METALS[2]!.density.value);
  expect(METALS[2]!.name).not.toBe(METALS[0]!.name);
});

test('a tilt that turns otherwise between the same ends leaves what is drawn the very same', () => {
  const whole = drawnIn(book);
  const cell = book.cells.find((one): one is TiltCell => one.kind === 'tilt' && one.id === charge.tilt)!;
  const slower = { ...cell, tilt: { ...tilt, smoothing: 0.31 } as TiltCell['tilt'] };
  expect(drawnIn(withCell(slower), whole)).toBe(whole);
  expect(drawnIn(withCell({ ...cell, tilt: { ...tilt, start: tilt.start - 0.01 } }), whole)).not.toBe(whole);
});

test('a section poured with the charge of another is drawn with the metal of that pour', () => {
  const pour = book.cells.find((cell): cell is PourCell => cell.kind === 'pour')!;
  const other = { ...sectionIn(book), id: 'section-2', name: 'Other', section: taperedLever() };
  const changed = withCell({ ...pour, section: other.id });
  const cells = [...changed.cells, other];
  const { drawn, evaluations } = drawnOf({ ...changed, cells }, other, other.section);
  const run = evaluations.get(pour.id)!;
  if (!('plan' in run)) throw new Error('The pour is not in order.');
  expect(drawn).toMatchObject({ charge: null, assumed: null, volume: run.plan.volume, start: tilt.start });
  expect(drawn.from?.id).toBe(pour.id);
  expect(drawn.fromLip).toBe(fillLevelFromVolume(other.section, tilt.start, run.plan.volume));
});
