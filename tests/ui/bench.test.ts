import { beforeEach, expect, test } from 'vitest';
import { deleteCell } from '$src/cells/edit';
import type { ChargeCell, TiltCell } from '$src/cells/kinds';
import type { PourRecord } from '$src/core/pour/record';
import { fromDegrees } from '$src/core/units';
import { Bench } from '$src/ui/bench.svelte';
import { cellState } from '$src/ui/cellState';
import { planChange } from '$src/ui/planChange';
import { firstOf, sampleBook } from '../book/sample';

let bench: Bench;
let pour: string;

beforeEach(() => {
  bench = new Bench();
  bench.open(sampleBook());
  pour = firstOf(bench.book, 'pour').id;
});

/** As if the queue had finished the run of the pour's present plan. */
function finishRun(coarse = false): PourRecord {
  const evaluation = bench.evaluation(pour);
  if (evaluation.state !== 'needs a run') throw new Error(`The pour is ${evaluation.state}.`);
  const record = { plan: evaluation.plan, planHash: evaluation.planHash } as PourRecord;
  const kept = { record, coarse, stopped: false };
  bench.queue.records.set(evaluation.planHash, kept);
  bench.tellRuns();
  return record;
}

function setMass(mass: number, merge: string | null = null): void {
  const { id } = firstOf(bench.book, 'charge');
  bench.changeCell<ChargeCell>(
    id,
    'charge changed',
    (old) => ({ ...old, charge: { by: 'mass', mass } }),
    merge,
  );
}

const stateWord = (id: string) => cellState(bench, bench.cell(id)!)?.word;

test('a pour without a record waits and shows no figure', () => {
  expect(bench.run(pour)).toMatchObject({ record: null, state: 'waiting', current: false, outdated: null });
});

test('a finished run is fresh; a change marks it out of date, says what changed and keeps it in sight', () => {
  const record = finishRun();
  expect(bench.run(pour)).toMatchObject({ record, state: 'fresh', current: true });
  setMass(0.5);
  const run = bench.run(pour);
  expect(run).toMatchObject({ record, state: 'out of date', current: false });
  expect(planChange(run.outdated!.before, run.outdated!.now)).toMatch(
    /^Charge changed from .* to 0\.500 kg \([\d.]+ mm below the lip\)\.$/,
  );
  bench.undo();
  expect(bench.run(pour)).toMatchObject({ record, state: 'fresh', outdated: null });
});

test('a pour that is taken out of the book holds no record; brought back it takes it from what is kept', () => {
  const record = finishRun();
  const run = bench.run(pour);
  bench.change('pour deleted', (book) => deleteCell(book, pour));
  expect(run.record).toBeNull();
  bench.undo();
  expect(bench.run(pour)).toMatchObject({ record, state: 'fresh', current: true });
  bench.change('pour deleted', (book) => deleteCell(book, pour));
  bench.queue.records.clear();
  bench.undo();
  expect(bench.run(pour)).toMatchObject({ record: null, state: 'waiting' });
});

test('a coarse record is current but not fresh', () => {
  finishRun(true);
  expect(bench.run(pour)).toMatchObject({ state: 'waiting', coarse: true, current: true });
});

test('when the solver cannot be loaded no figure appears, not even an old one', () => {
  finishRun();
  setMass(0.5);
  bench.queue.failures.set(bench.planHash(pour)!, 'The solver could not be loaded.');
  bench.tellRuns();
  expect(bench.run(pour)).toMatchObject({
    record: null,
    state: 'failed',
    error: 'The solver could not be loaded.',
  });
});

test('a wrong tilt blocks what takes it and leaves the last record in sight', () => {
  const record = finishRun();
  const tilt = firstOf(bench.book, 'tilt').id;
  bench.changeCell<TiltCell>(tilt, 'start', (old) => ({
    ...old,
    tilt: { ...old.tilt, start: fromDegrees(80) },
  }));
  expect(stateWord(tilt)).toBe('wrong input');
  expect(stateWord(pour)).toBe('blocked');
  expect(bench.run(pour)).toMatchObject({ record, state: 'out of date', current: false });
});

test('a comparison tells the worst of its pours', () => {
  const compare = firstOf(bench.book, 'compare').id;
  expect(stateWord(compare)).toBe('waiting');
  finishRun();
  expect(stateWord(compare)).toBe('fresh');
  setMass(0.5);
  expect(stateWord(compare)).toBe('out of date');
});

test('two steps of one name that are undone are both told', () => {
  setMass(0.5);
  setMass(0.6);
  bench.undo();
  const first = bench.announcement;
  bench.undo();
  expect(bench.announcement.trim()).toBe(first);
  expect(bench.announcement).not.toBe(first);
});

test('typing in one field is one undo step, and undo tells what it took back', () => {
  const before = bench.book;
  for (const mass of [0.5, 0.55, 0.551]) setMass(mass, 'mass');
  expect(bench.undoLabel).toBe('charge changed');
  bench.undo();
  expect(bench.book).toBe(before);
  expect(bench.announcement).toBe('Undone: charge changed.');
  bench.redo();
  expect(firstOf(bench.book, 'charge').charge).toEqual({ by: 'mass', mass: 0.551 });
});
