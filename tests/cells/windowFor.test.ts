import { expect, test } from 'vitest';
import { addCell } from '$src/cells/edit';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, StudyCell } from '$src/cells/kinds';
import { withLimits } from '$src/cells/machineLimits';
import { newCell } from '$src/cells/newCell';
import { aroundPour, windowFor } from '$src/cells/windowFor';
import { levelPath } from '$src/core/level/levelPath';
import { BENCH_MACHINE } from '$src/core/tilt/machine/machine';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromCelsius, fromDegrees } from '$src/core/units';
import { standOfPlan } from '$src/report/drawing/metalAtRest';
import { isLadledIn } from '$src/report/ladledIn';
import { POUR_WINDOW } from '$src/report/study/pourWindow';
import { settingNamed } from '$src/report/study/settings';
import { firstOf, sampleBook } from '../book/sample';
import { planOf } from '../books/planOf';

const book = sampleBook();
const pour = firstOf(book, 'pour').id;
const levelShop: Book = {
  ...withLimits(book, [firstOf(book, 'tilt').id], { ...WIDEST_LIMITS, highestStart: 0 }),
};

test('a machine that starts uphill has its start angles tried', () => {
  const widest = withLimits(book, [firstOf(book, 'tilt').id], WIDEST_LIMITS);
  const [across, up] = windowFor(widest, pour).axes;
  expect(across).toEqual(POUR_WINDOW.axes[0]);
  expect(up).toEqual({ ...POUR_WINDOW.axes[1], from: up!.from });
  expect(windowFor(book, null)).toBe(POUR_WINDOW);
});

test('times begin where the machine can turn through all that is tried', () => {
  const [times] = windowFor(book, pour).axes;
  // From +45° to −90° at 45 °/s, and coming up to it and to rest: 3.3 s.
  expect(times).toEqual({ ...POUR_WINDOW.axes[0], from: 3.5 });
  const slow = withLimits(book, [firstOf(book, 'tilt').id], { ...WIDEST_LIMITS, quickest: fromDegrees(10) });
  expect(windowFor(slow, pour).axes[0]!.from).toBe(14);
});

test('one that can only start level has the lengths of its basin tried, and the study is in order', () => {
  const study = windowFor(levelShop, pour);
  expect(study.axes.map(({ setting }) => setting)).toEqual(['tilt.time', 'basin.length']);
  const level = levelShop.cells.map((cell) =>
    cell.kind === 'tilt' && cell.tilt.kind === 'steady'
      ? { ...cell, tilt: { ...cell.tilt, start: 0 } }
      : cell,
  );
  const cell = { ...newCell('study', levelShop), pour, study };
  if (cell.kind !== 'study') throw new Error('A study is a study.');
  const whole = addCell({ ...levelShop, cells: level }, cell);
  expect(evaluateBook(whole).get(cell.id)).toEqual({ state: 'ready' });
});

test('choosing the pour changes what a new study varies, and no other', () => {
  expect(aroundPour(levelShop, POUR_WINDOW, pour)).toEqual(windowFor(levelShop, pour));
  const own = { ...POUR_WINDOW, axes: [{ ...POUR_WINDOW.axes[0]!, to: 9 }] };
  expect(aroundPour(levelShop, own, pour)).toBe(own);
});

/** The sample's first pour with another kind of tilt. */
function withTilt(tilt: Partial<Extract<Tilt, { kind: 'machine' }>> | { readonly kind: 'front-led' }): Book {
  const cells = book.cells.map((cell) => {
    if (cell.kind !== 'tilt') return cell;
    const { start, limits } = cell.tilt;
    const end = fromDegrees(-90);
    const own =
      tilt.kind === 'front-led'
        ? { kind: 'front-led' as const, start, end, limits, share: 0.6, homeWithin: null }
        : { kind: 'machine' as const, start, end, limits, machine: BENCH_MACHINE, ...tilt };
    return { ...cell, tilt: own };
  });
  return { ...book, cells };
}

const axesAround = (changed: Book) => {
  const study = windowFor(changed, pour);
  const cell = { ...newCell('study', changed), pour, study } as StudyCell;
  expect(evaluateBook(addCell(changed, cell)).get(cell.id)).toEqual({ state: 'ready' });
  return study.axes;
};

test('a machine has its valve tried about where it stands, one set by Kv how warm its oil is, and no start it cannot reach', () => {
  const limits = { ...WIDEST_LIMITS, highestStart: fromDegrees(25) };
  const start = fromDegrees(20);
  const [valve, starts] = axesAround(withTilt({ limits, start }));
  const { open } = BENCH_MACHINE.valve as { readonly open: number };
  expect(valve).toMatchObject({ setting: 'tilt.valve', to: 2 * open });
  expect(valve!.from).toBeLessThan(open / 2);
  expect(starts).toMatchObject({ setting: 'tilt.start', to: fromDegrees(25) });
  const machine = { ...BENCH_MACHINE, valve: { by: 'Kv', kv: 0.1 } as const };
  const [oil] = axesAround(withTilt({ machine }));
  expect(oil!.setting).toBe('tilt.oil');
  expect((oil!.from + oil!.to) / 2).toBeCloseTo(BENCH_MACHINE.oil.temperature, 9);
  // Of cold oil no colder is tried than is taken.
  const cold = { ...machine, oil: { ...machine.oil, temperature: fromCelsius(-15) } };
  expect(axesAround(withTilt({ machine: cold }))[0]!.from).toBeCloseTo(fromCelsius(-20), 9);
});

test('a front-led tilt has the share of critical tried', () => {
  expect(axesAround(withTilt({ kind: 'front-led' }))[0]).toMatchObject({ setting: 'tilt.share', from: 0.3 });
});

test('starts at which the charge lies in the die while it is ladled are left out, but for one step', () => {
  const full = {
    ...book,
    cells: book.cells.map((cell) =>
      cell.kind === 'charge' ? { ...cell, charge: { by: 'mass' as const, mass: 0.6 } } : cell,
    ),
  };
  const plan = planOf(full, pour);
  const shareAt = (start: number): number =>
    levelPath(plan.section, plan.volume, start, start, standOfPlan(plan)).share[0]!;
  const starts = windowFor(full, pour).axes[1]!;
  expect(isLadledIn(shareAt(POUR_WINDOW.axes[1]!.from))).toBe(true);
  expect(starts.from).toBeGreaterThan(POUR_WINDOW.axes[1]!.from);
  const step = (starts.to - starts.from) / (starts.points - 1);
  const held = Array.from({ length: starts.points }, (_, k) => !isLadledIn(shareAt(starts.from + k * step)));
  // One point lies below, as the edge of the window, or two where the range begins on a whole degree.
  expect(held.indexOf(true)).toBeGreaterThan(0);
  expect(held.indexOf(true)).toBeLessThanOrEqual(2);
});

/** The sample's first pour with its tilt changed. */
const withSteady = (change: Partial<Extract<Tilt, { kind: 'steady' }>>): Book => ({
  ...withLimits(book, [firstOf(book, 'tilt').id], WIDEST_LIMITS),
  cells: withLimits(book, [firstOf(book, 'tilt').id], WIDEST_LIMITS).cells.map((cell) =>
    cell.kind === 'tilt' && cell.tilt.kind === 'steady'
      ? { ...cell, tilt: { ...cell.tilt, ...change } }
      : cell,
  ),
});

test.each([
  ['slow', { start: fromDegrees(30), rate: fromDegrees(5.3) }],
  ['quick', { start: fromDegrees(10), rate: fromDegrees(80) }],
  ['steep', { start: fromDegrees(52), rate: fromDegrees(15) }],
])('the range around a %s pour holds the pour itself', (_, change) => {
  const changed = withSteady(change);
  const axes = axesAround(changed);
  const plan = planOf(changed, pour);
  const isOutside = POUR_WINDOW.axes.map(({ setting, from, to }) => {
    const own = settingNamed(plan, setting)!.read(plan)!;
    return own < from || own > to;
  });
  // Each of them lies outside what a study begins with where nothing is known of its pour.
  expect(isOutside).toContain(true);
  for (const { setting, from, to } of axes) {
    const own = settingNamed(plan, setting)!.read(plan)!;
    expect(own).toBeGreaterThanOrEqual(from);
    expect(own).toBeLessThanOrEqual(to);
  }
});
