import { describe, expect, test } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { Book, CellId, ChargeCell, SectionCell } from '$src/cells/kinds';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { startLevel } from '$src/core/level/startLevel';
import type { PourPlan } from '$src/core/pour/plan';
import { METRIC } from '$src/core/units';
import { fillWords } from '$src/report/card/fillMark';
import { metalAtRest, standOfPlan } from '$src/report/drawing/metalAtRest';
import { startLevelWords } from '$src/report/startLevelWords';
import { startReadings } from '$src/ui/section/levelReadings';
import { drawnWith } from '$src/ui/section/sectionDrawnWith';
import { levelOrUphill } from '../books/sources/levelOrUphill';
import { inLongBasin } from './longBasin';

const planOf = (book: Book, id: CellId): PourPlan => {
  const evaluation = evaluateBook(book).get(id);
  if (evaluation?.state !== 'needs a run') throw new Error(`${id} is ${evaluation?.state}`);
  return evaluation.plan;
};
const cellOf = <Kind extends Book['cells'][number]>(book: Book, id: CellId | null): Kind =>
  book.cells.find((cell) => cell.id === id) as Kind;

/** The first example's section as the page draws it, with what the page says of its charge. */
function sectionAsDrawn(book: Book, pourId: CellId) {
  const pour = cellOf<Extract<Book['cells'][number], { kind: 'pour' }>>(book, pourId);
  const charge = cellOf<ChargeCell>(book, pour.charge);
  const section = cellOf<SectionCell>(book, charge.section);
  const evaluations = evaluateBook(book);
  const around = {
    charges: () => [charge],
    metals: () => [],
    pours: () => [],
    cell: (id: CellId | null) => book.cells.find((cell) => cell.id === id) ?? null,
    evaluation: (id: CellId) => evaluations.get(id)!,
  };
  const evaluation = evaluations.get(charge.id)!;
  if (!('charge' in evaluation)) throw new Error(`${charge.id} is ${evaluation.state}`);
  return {
    readings: startReadings(section.section, drawnWith(around, section, section.section)),
    charge: evaluation.charge,
  };
}

/** Pours that begin where their charge is measured: a charge that several tilts share is told at the start of one. */
const pours = levelOrUphill.cells.flatMap((cell) =>
  cell.kind === 'pour' && cell.tilt === cellOf<ChargeCell>(levelOrUphill, cell.charge).tilt ? [cell.id] : [],
);

describe.each(pours)('%s', (pour) => {
  const plan = planOf(levelOrUphill, pour);
  const { readings, charge } = sectionAsDrawn(levelOrUphill, pour);

  test('is drawn before the tilt alike in section, charge and card, and as the pour begins', () => {
    const atRest = metalAtRest(plan.section, plan.volume, plan.tilt.start, standOfPlan(plan)).shape;
    expect(readings.shape).toEqual(atRest);
    const begins = levelPath(plan.section, plan.volume, plan.tilt.start, plan.tilt.start, standOfPlan(plan))
      .pools[0];
    expect(readings.pools).toEqual(begins);
  });

  test('has one mark on section, charge and card', () => {
    const onCard = fillWords(plan, METRIC).replace(/^to the brink: /, '');
    expect(onCard).toMatch(/mm below the lip$/);
    const drawn = startLevelWords(readings.level, METRIC);
    expect(startLevelWords(charge.startLevel, METRIC)).toBe(drawn);
    // The card gives it in half millimetres, as a hand with a ladle keeps it.
    const [kept, exact] = [onCard, drawn].map((words) => Number.parseFloat(words));
    expect(Math.abs(kept! - exact!)).toBeLessThanOrEqual(0.25);
  });
});

test('metal whose skin stops it before the lip is said to stop there, not to stand over the lip', () => {
  const plan = inLongBasin(planOf(levelOrUphill, 'level-sill'));
  const level = startLevel(plan.section, plan.volume, plan.tilt.start, standOf(plan.liquid));
  // As deep as an open front of it stands, √(2σ/g), on all the floor it covers.
  const depth = Math.sqrt((2 * standOf(plan.liquid).sigma) / 9.80665);
  expect(level.held).toBeCloseTo(depth - 0.01, 5);
  expect(level.shortOfMouth).toBeCloseTo(0.35 - (0.35 * 0.0104) / depth, 3);
  expect(fillWords(plan, METRIC)).toMatch(/^stops \d+ mm before the mouth: weigh it$/);
  expect(startLevelWords(level, METRIC)).toMatch(
    /above the lip, stopping \d+ mm before the mouth, as its skin holds it \(dead level/,
  );
});

test('without a stand both levels are one, and only one is said', () => {
  const plan = planOf(levelOrUphill, 'uphill-flush');
  const level = startLevel(plan.section, plan.volume, plan.tilt.start, null);
  expect(level.held).toBe(level.dead);
  expect(startLevelWords(level, METRIC)).toMatch(/^[\d.]+ mm below the lip$/);
});

test('metal that stands in the die while it is ladled is said to stand there, not to be held back by its skin', () => {
  const plan = planOf(levelOrUphill, 'uphill-flush');
  const stand = standOf(plan.liquid);
  const downhill = { ...plan, tilt: { ...plan.tilt, start: 0 } };
  const level = startLevel(plan.section, plan.volume, 0, stand);
  const share = levelPath(plan.section, plan.volume, 0, 0, stand).share[0]!;
  expect(share).toBeGreaterThan(0.1);
  expect(startLevelWords(level, METRIC)).toBe(
    `already in the die: the ladle fills ${Math.round(100 * share)} % of it`,
  );
  expect(fillWords(downhill, METRIC)).toMatch(/^runs into the die at ladling: weigh it/);
});
