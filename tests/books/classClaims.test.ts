import { describe, expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import { guessHiding } from '$src/cells/guessHides';
import type { Book, GuessCell } from '$src/cells/kinds';
import { GRAVITY } from '$src/core/gravity';
import { criticalSpeedOf } from '$src/core/metal/criticalSpeed';
import { metalNamed } from '$src/core/metal/metals';
import { PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import { simulate } from '$src/core/pour/simulate';
import { fromDegrees, toDegrees, toMillimetres } from '$src/core/units';
import { answerOf, CLOSE } from '$src/report/guess/choices';
import { speedCall } from '$src/report/speedCall';
import { planAt } from '$src/report/study/planAt';
import { pointResult } from '$src/report/study/pointFigures';
import { foldsFilm, isCold, type Region, regionOf } from '$src/report/study/region';
import { ladle } from './sources/class/ladle';
import { oxideFilm } from './sources/class/oxideFilm';
import { pastLevel } from './sources/class/pastLevel';
import { readWindow } from './sources/class/readWindow';
import { sillJet } from './sources/class/sillJet';
import { uphill } from './sources/class/uphill';

/** What the notes of the books for a class claim, and what their guesses come to, on the mesh the class sees. */

const BOOKS: readonly Book[] = [oxideFilm, uphill, ladle, pastLevel, sillJet, readWindow];
const records = new Map<string, PourRecord>();

function recordOf(book: Book, id: string): PourRecord {
  const key = `${book.title}/${id}`;
  const known = records.get(key);
  if (known) return known;
  const evaluation = evaluateBook(book).get(id);
  if (evaluation?.state !== 'needs a run') throw new Error(`${id} is ${evaluation?.state}`);
  const pour = simulate(evaluation.plan);
  let step = pour.next();
  while (!step.done) step = pour.next();
  records.set(key, step.value);
  return step.value;
}

const guesses = BOOKS.flatMap((book) =>
  book.cells
    .filter((cell): cell is GuessCell => cell.kind === 'guess')
    .map((guess) => ({ book, guess, id: guess.id })),
);

function answer(book: Book, guessId: string) {
  const guess = guesses.find((one) => one.book === book && one.id === guessId)!.guess;
  const pours = guess.pours.map((id) => ({ id, name: id }));
  return answerOf(
    guess.ask,
    pours,
    guess.pours.map((id) => recordOf(book, id)),
  );
}

const firstFlow = ({ figures }: PourRecord): number => {
  if (figures.firstFlow.kind !== 'angle') throw new Error(`First flow is ${figures.firstFlow.kind}.`);
  return toDegrees(figures.firstFlow.inclination);
};
const peak = ({ figures }: PourRecord): number => figures.peakFrontSpeed!;
const critical = ({ plan }: PourRecord): number => plan.liquid.criticalSpeed;

describe('books for a class', () => {
  it('are computed on the coarse mesh, and ask before they show', () => {
    for (const book of BOOKS) {
      const pours = book.cells.filter((cell) => cell.kind === 'pour');
      expect(pours.length).toBeGreaterThanOrEqual(2);
      for (const pour of pours) {
        expect(pour.computation.meshCells).toBe(PREVIEW_MESH_CELLS);
        expect(guessHiding(book, pour), `${pour.name} is shown at once`).not.toBeNull();
      }
    }
  });

  it.each(guesses)('$id has a locked question with an answer', ({ book, guess }) => {
    expect(guess.locked).toBe(true);
    expect(evaluateBook(book).get(guess.id)?.state).toBe('ready');
    for (const id of guess.pours) expect(recordOf(book, id).figures.peakFrontSpeed).not.toBeNull();
    if (guess.ask !== 'front speed') expect(answer(book, guess.id)).not.toBeNull();
  });
});

describe('a skin on the metal', () => {
  const { surfaceTension, density } = metalNamed('A356')!;

  it('takes the sum from the metal of the book, step by step as in the note', () => {
    expect([surfaceTension.value, density.value]).toEqual([0.865, 2400]);
    const steps = [0.865 * GRAVITY, (0.865 * GRAVITY) / 2400];
    expect(steps[0]).toBeCloseTo(8.49, 1);
    expect(steps[1]).toBeCloseTo(0.00354, 5);
    expect(Math.sqrt(steps[1]!)).toBeCloseTo(0.0595, 4);
    expect(Math.sqrt(Math.sqrt(steps[1]!))).toBeCloseTo(0.244, 3);
    expect(criticalSpeedOf(0.865, 2400)).toBeCloseTo(0.49, 2);
  });

  it('gives the limit as a height too, and as far off for a clean surface', () => {
    const puddle = 2 * Math.sqrt(0.865 / (2400 * GRAVITY));
    expect(puddle).toBeCloseTo(0.0121, 4);
    expect(Math.sqrt(2 * GRAVITY * puddle)).toBeCloseTo(criticalSpeedOf(0.865, 2400), 12);
    expect(criticalSpeedOf(1.1, 2400)).toBeCloseTo(0.52, 2);
    expect(criticalSpeedOf(1.1, 2400) / criticalSpeedOf(0.865, 2400)).toBeCloseTo(1.06, 2);
  });

  it('keeps the gentle pour under and the falling one over', () => {
    expect(speedCall(recordOf(oxideFilm, 'gentle'))).toBe('under');
    expect(answer(oxideFilm, 'guess-falling')?.key).toBe('over');
  });

  it('folds in more ways than by speed, in the falling pour', () => {
    const kinds = new Set(recordOf(oxideFilm, 'falling').folds.map(({ kind }) => kind));
    expect(kinds.has('front over critical')).toBe(true);
    expect(kinds.size).toBeGreaterThan(2);
    expect(recordOf(oxideFilm, 'gentle').folds.length).toBeGreaterThan(0);
  });
});

describe('uphill first', () => {
  it('comes in downhill from the pit, uphill from the flush basin', () => {
    expect(answer(uphill, 'guess-level')?.key).toBe('downhill');
    expect(answer(uphill, 'guess-uphill')?.key).toBe('uphill');
  });

  it('makes little odds to the pit where the machine starts', () => {
    const [level, steep] = [recordOf(uphill, 'level-pit'), recordOf(uphill, 'uphill-pit')];
    expect(Math.abs(firstFlow(level) - firstFlow(steep))).toBeLessThan(3);
    expect(answer(uphill, 'guess-mixed')?.key).toBe(CLOSE);
    for (const record of [level, steep]) expect(peak(record)).toBeGreaterThan(1.3 * critical(record));
  });

  it.each([
    [20, 'angle'],
    [10, 'already in the die'],
  ])('started at %i° the flush basin has metal %s', (start, kind) => {
    const cells = uphill.cells.map((cell) =>
      cell.id === 'uphill' && cell.kind === 'tilt'
        ? { ...cell, tilt: { ...cell.tilt, start: fromDegrees(start) } }
        : cell,
    );
    const book = { ...uphill, title: `${uphill.title}, ${start}`, cells };
    expect(recordOf(book, 'uphill-flush').figures.firstFlow.kind).toBe(kind);
  });
});

describe('a short ladle', () => {
  const fills = ['fill-1', 'fill-12', 'fill-18'].map((id) => recordOf(ladle, id));

  it('comes later and runs faster the lower the fill', () => {
    for (let index = 1; index < fills.length; index++) {
      expect(firstFlow(fills[index]!)).toBeLessThan(firstFlow(fills[index - 1]!));
      expect(peak(fills[index]!)).toBeGreaterThan(peak(fills[index - 1]!));
    }
  });

  it('is answered uphill, downhill, and the shortest', () => {
    expect(answer(ladle, 'guess-full')?.key).toBe('uphill');
    expect(answer(ladle, 'guess-short')?.key).toBe('downhill');
    expect(answer(ladle, 'guess-quickest')?.key).toBe('fill-18');
    expect(fills.map((record) => speedCall(record))).toEqual(['under', 'too close to call', 'over']);
  });

  it('fills the arm each time', () => {
    for (const fill of fills) expect(fill.outcome.kind).toBe('filled and quiet');
  });
});

describe('slow past level', () => {
  const [even, slow, quick] = ['even', 'slow-first', 'quick-first'].map((id) => recordOf(pastLevel, id)) as [
    PourRecord,
    PourRecord,
    PourRecord,
  ];

  it('spends the same time three ways', () => {
    const upright = (record: PourRecord) => {
      const index = record.series.inclination.findIndex((angle) => angle <= fromDegrees(-89.9));
      return record.series.time[index]!;
    };
    for (const record of [even, slow, quick]) expect(Math.abs(upright(record) - 7.5)).toBeLessThan(0.15);
  });

  it('has its fastest front where the quick part comes first, and its slowest where it comes last', () => {
    expect(answer(pastLevel, 'guess-quickest')?.key).toBe('quick-first');
    expect(peak(slow)).toBeLessThan(peak(even));
  });

  it('has every front home by 5° past level', () => {
    for (const record of [even, slow, quick]) {
      const index = record.series.inclination.findIndex((angle) => angle <= fromDegrees(-5));
      expect(toMillimetres(record.series.front[index]!)).toBeGreaterThan(199);
    }
  });

  it('pays for slowness with warmth', () => {
    const margin = ({ figures }: PourRecord) => figures.lap!.margin;
    expect(margin(slow)).toBeGreaterThan(1.5);
    expect(margin(slow)).toBeLessThan(3);
    expect(margin(even)).toBeGreaterThan(7);
    expect(margin(quick)).toBeGreaterThan(7);
  });
});

describe('a sill', () => {
  it('makes the highest of three the fastest', () => {
    expect(answer(sillJet, 'guess-order')?.key).toBe('high');
    expect(speedCall(recordOf(sillJet, 'high'))).toBe('over');
    expect(firstFlow(recordOf(sillJet, 'high'))).toBeLessThan(0);
  });

  it('makes the same jet on a fine mesh', () => {
    const evaluation = evaluateBook(sillJet).get('high');
    if (evaluation?.state !== 'needs a run') throw new Error('No plan.');
    const { plan } = evaluation;
    const pour = runPour({ ...plan, computation: { ...plan.computation, meshCells: 400 } });
    let step = pour.next();
    while (!step.done) step = pour.next();
    expect(speedCall(step.value)).toBe('over');
    expect(firstFlow(step.value)).toBeLessThan(0);
  });

  it('is forgiven when it is low, since its metal still comes in uphill', () => {
    for (const id of ['flush', 'low']) {
      expect(firstFlow(recordOf(sillJet, id))).toBeGreaterThan(0);
      expect(speedCall(recordOf(sillJet, id))).toBe('under');
    }
  });

  it('jets no faster than the fall of the note, and over the limit', () => {
    const level = recordOf(sillJet, 'level');
    expect(Math.abs(firstFlow(level) + 10)).toBeLessThan(1);
    const fall = 0.2 * Math.sin(fromDegrees(10));
    expect(toMillimetres(fall)).toBeCloseTo(35, 0);
    expect(Math.sqrt(2 * GRAVITY * fall)).toBeCloseTo(0.83, 2);
    expect(peak(level)).toBeLessThan(Math.sqrt(2 * GRAVITY * fall));
    expect(answer(sillJet, 'guess-level')?.key).toBe('over');
    expect(toMillimetres(0.2 * Math.sin(fromDegrees(3.5)))).toBeCloseTo(12, 0);
  });

  it('is no gentler for a slower machine', () => {
    const cells = sillJet.cells.map((cell) =>
      cell.id === 'level-tilt' && cell.kind === 'tilt' && cell.tilt.kind === 'steady'
        ? { ...cell, tilt: { ...cell.tilt, rate: fromDegrees(5) } }
        : cell,
    );
    const slower = recordOf({ ...sillJet, title: 'slower', cells }, 'level');
    expect(firstFlow(slower)).toBeLessThan(0);
    expect(speedCall(slower)).toBe('over');
  });
});

describe('reading a pour window', () => {
  it('folds in 1.5 seconds, stays unfilled in 30, fills warm in 10', () => {
    expect(answer(readWindow, 'guess-quick')?.key).toBe('over');
    expect(answer(readWindow, 'guess-slow')?.key).toBe('not filled');
    expect(recordOf(readWindow, 'slow').figures.lap?.kind).toBe('misrun');
    expect(answer(readWindow, 'guess-middle')?.key).toBe('warm');
    expect(speedCall(recordOf(readWindow, 'middle'))).toBe('under');
  });

  it.each([
    ['1.5', 'in the hatch', foldsFilm],
    ['10', 'on blank paper', (region: Region) => region === 'sound'],
    ['30', 'among the level lines', isCold],
  ])('shows the pour of %s seconds %s on its own map, made on its own mesh', (seconds, _, isThere) => {
    const study = readWindow.cells.find((cell) => cell.kind === 'study')!;
    const evaluation = evaluateBook(readWindow).get('middle');
    if (study.kind !== 'study' || evaluation?.state !== 'needs a run') throw new Error('No study.');
    const { plan } = evaluation;
    const base = { ...plan, computation: { ...plan.computation, meshCells: study.study.meshCells } };
    const at = planAt(base, { 'tilt.time': Number(seconds), 'tilt.start': fromDegrees(30) });
    if ('refused' in at) throw new Error('refused');
    const pour = runPour(at.plan);
    let step = pour.next();
    while (!step.done) step = pour.next();
    const region = regionOf(pointResult(step.value));
    expect(isThere(region), `it is ${region}`).toBe(true);
  });

  it('answers alike on a mesh twice as fine', () => {
    const finer = (id: string) => {
      const evaluation = evaluateBook(readWindow).get(id);
      if (evaluation?.state !== 'needs a run') throw new Error(`${id} is ${evaluation?.state}`);
      const plan = { ...evaluation.plan, computation: { ...evaluation.plan.computation, meshCells: 200 } };
      const at = planAt(plan, {});
      if ('refused' in at) throw new Error('refused');
      const pour = runPour(at.plan);
      let step = pour.next();
      while (!step.done) step = pour.next();
      return step.value;
    };
    expect(speedCall(finer('quick'))).toBe('over');
    expect(finer('slow').figures.lap?.kind).toBe('misrun');
    expect(finer('middle').figures.filledTime).not.toBeNull();
  });

  it('turns for as long as each pour is called', () => {
    for (const [id, seconds] of [
      ['quick', 1.5],
      ['middle', 10],
      ['slow', 30],
    ] as const) {
      const { series } = recordOf(readWindow, id);
      const index = series.inclination.findIndex((angle) => angle <= fromDegrees(-89.9));
      expect(Math.abs(series.time[index]! - seconds)).toBeLessThan(0.15);
    }
  });
});

const NAMED: Readonly<Record<string, Book>> = { oxideFilm, uphill, ladle, pastLevel, sillJet };

describe('the answers in docs/teaching.md', () => {
  it.each([
    ['oxideFilm', 'gentle', 0.29],
    ['oxideFilm', 'falling', 0.75],
    ['ladle', 'fill-1', 0.33],
    ['ladle', 'fill-18', 0.58],
    ['pastLevel', 'even', 0.32],
    ['pastLevel', 'slow-first', 0.22],
    ['pastLevel', 'quick-first', 0.52],
    ['sillJet', 'high', 0.7],
  ])('%s: the front of %s reaches about %f m/s', (name, id, speed) => {
    expect(Math.abs(peak(recordOf(NAMED[name]!, id)) - speed)).toBeLessThan(0.02);
  });

  it.each([
    ['uphill', 'level-pit', -10],
    ['uphill', 'uphill-flush', 19],
    ['ladle', 'fill-1', 11],
    ['ladle', 'fill-18', -3],
  ])('%s: metal of %s comes in near %i°', (name, id, degrees) => {
    expect(Math.abs(firstFlow(recordOf(NAMED[name]!, id)) - degrees)).toBeLessThan(1);
  });

  it.each([
    ['oxideFilm', 'gentle'],
    ['pastLevel', 'even'],
    ['sillJet', 'high'],
  ])('%s: the front of %s runs faster at the end than at the mouth', (name, id) => {
    const { speed } = recordOf(NAMED[name]!, id).frontSpeeds;
    expect(speed[speed.length - 1]!).toBeGreaterThan(2 * speed[0]!);
  });
});
