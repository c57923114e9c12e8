import { readFileSync } from 'node:fs';
import svgpath from 'svgpath';
import { describe, expect, test } from 'vitest';
import { foldAt } from '$src/report/foldScheme/foldAt';
import { FOLD_KINDS, FRAME, foldScheme } from '$src/report/foldScheme/foldScheme';
import { foldSheet } from '$src/report/foldScheme/foldSheet';
import { metalThere } from '$src/report/foldScheme/metalThere';
import { inventedFold, inventedPlan, inventedRecord } from './inventedRecord';

/** Every point that a path is given by, in the frame of the schematic. */
function pointsOf(path: string): readonly (readonly [x: number, y: number])[] {
  const points: [number, number][] = [];
  svgpath(path)
    .abs()
    .iterate((segment, _, x, y) => {
      const [name, ...numbers] = segment as [string, ...number[]];
      if (name === 'H') points.push([numbers[0]!, y]);
      else if (name === 'V') points.push([x, numbers[0]!]);
      else for (let k = 0; k + 1 < numbers.length; k += 2) points.push([numbers[k]!, numbers[k + 1]!]);
    });
  return points;
}

const DEPTHS = [null, 0, 0.3, 0.5, 1];
const topOf = (kind: (typeof FOLD_KINDS)[number], fullness: number | null): number =>
  Math.min(
    ...foldScheme(kind, fullness)
      .lines.filter(({ as }) => as === 'skin')
      .flatMap(({ path }) => pointsOf(path).map(([, y]) => y)),
  );

describe('the schematic of a fold', () => {
  test.each(FOLD_KINDS)(
    '%s: lies within its frame however full the section is, and says what it shows',
    (kind) => {
      for (const fullness of DEPTHS) {
        const { lines, label, says } = foldScheme(kind, fullness);
        for (const [x, y] of lines.flatMap(({ path }) => pointsOf(path))) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(FRAME.width);
          expect(y).toBeGreaterThanOrEqual(FRAME.roof - 1e-9);
          expect(y).toBeLessThanOrEqual(FRAME.floor);
        }
        expect(label.y).toBeLessThanOrEqual(FRAME.floor);
        expect(says).toMatch(/^[A-Z].{20,140}\.$/);
      }
    },
  );

  test('doubles the film in every kind but gas that only stays', () => {
    const without = FOLD_KINDS.filter((kind) => !foldScheme(kind).lines.some(({ as }) => as === 'film'));
    expect(without).toEqual(['gas left under the roof']);
  });

  test('draws the metal as deep as it was computed', () => {
    for (const kind of ['fronts meet', 'return wave', 'front stalls', 'skin contraction'] as const)
      expect(topOf(kind, 0.6)).toBeLessThan(topOf(kind, 0.3) - 5);
  });
});

describe('the metal at a fold', () => {
  const record = inventedRecord();

  test('is read from the record, the mean of the last stretch before its place', () => {
    const there = metalThere(record, inventedFold)!;
    const frame = record.frames.time.findLastIndex((time) => time <= inventedFold.time);
    const { x } = record.outline;
    const to = inventedPlan.section.mouth + inventedFold.place;
    const depths = Array.from({ length: x.length - 1 }, (_, cell) => cell)
      .filter((cell) => x[cell]! < to && x[cell + 1]! > to - 0.02)
      .map((cell) => record.frames.depth.data[frame * record.frames.depth.stride[0] + cell]!)
      .filter((depth) => depth > 2e-4);
    expect(there.depth).toBeCloseTo(depths.reduce((sum, depth) => sum + depth, 0) / depths.length, 9);
    expect(there.speed).toBeCloseTo(0.1, 6);
    expect(there.fullness).toBeCloseTo(there.depth / 0.03, 9);
  });

  test('is nothing where no metal has come yet', () => {
    expect(metalThere(record, { time: 0, place: 0.15 })).toBeNull();
  });
});

test('a playback has come to the last fold that has begun', () => {
  const folds = [1, 2, 3].map((number) => ({ ...inventedFold, number, time: number }));
  expect(foldAt(folds, 0.9)).toBeNull();
  expect(foldAt(folds, 1.9995)?.number).toBe(2);
  expect(foldAt(folds, 9)?.number).toBe(3);
});

test('the sheet in docs is the one that follows; else run: node src/setup/foldSheet.js', () => {
  const kept = readFileSync(new URL('../../docs/figures/folds.svg', import.meta.url), 'utf8');
  expect(kept).toBe(foldSheet());
  for (const kind of FOLD_KINDS) expect(kept).toContain(`>${kind}</text>`);
});
