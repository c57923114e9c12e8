import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coarsePoints, type Grid, gridOf, placeOf } from '$src/report/study/grid';
import { filledMap, pointsWanted } from '$src/report/study/refine';
import type { Region } from '$src/report/study/region';

const gridOfSize = (columns: number, rows: number): Grid =>
  gridOf({
    axes: [
      { setting: 'tilt.time', from: 2, to: 18, points: columns },
      { setting: 'tilt.start', from: 0, to: 1, points: rows },
    ],
  });

/** Refines against a known answer, as the page does. */
function refined(grid: Grid, answer: (column: number, row: number) => Region) {
  const known = new Map<number, Region>();
  for (let wave = pointsWanted(grid, known); wave.length > 0; wave = pointsWanted(grid, known))
    for (const point of wave) known.set(point, answer(...placeOf(grid, point)));
  const filled = filledMap(grid, known)!;
  const agreeing = filled.filter(({ region }, point) => region === answer(...placeOf(grid, point)));
  return { known, agreement: agreeing.length / grid.count, filled };
}

describe('refinement', () => {
  const grid = gridOfSize(20, 20);

  it('begins with 8 × 8 points, corners among them', () => {
    const coarse = coarsePoints(grid);
    expect(coarse).toHaveLength(64);
    expect(coarse).toEqual(expect.arrayContaining([0, 19, 380, 399]));
    expect(pointsWanted(grid, new Map())).toEqual(coarse);
  });

  it('stops there when all is of one region', () => {
    expect(refined(grid, () => 'sound').known.size).toBe(64);
  });

  it('finds any slanting edge exactly, with fewer than half of the pours', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        fc.double({ min: 4, max: 15, noNaN: true }),
        (turn, place) => {
          const side = (column: number, row: number) =>
            (column - place) * Math.cos(turn) + (row - place) * Math.sin(turn);
          const { known, agreement } = refined(grid, (column, row) =>
            side(column, row) > 0 ? 'folds film' : 'sound',
          );
          expect(agreement).toBe(1);
          expect(known.size).toBeLessThan(grid.count / 2);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('marks what it has not computed with the point the answer comes from', () => {
    const { known, filled } = refined(grid, (column) => (column > 9 ? 'laps' : 'sound'));
    filled.forEach(({ from }, point) => {
      expect(known.has(from)).toBe(true);
      expect(from === point).toBe(known.has(point));
    });
  });

  it('goes on where it was stopped', () => {
    const half = new Map(
      coarsePoints(grid)
        .slice(0, 30)
        .map((point) => [point, 'sound' as Region]),
    );
    expect(pointsWanted(grid, half)).toEqual(coarsePoints(grid).slice(30));
  });

  it('computes a curve at all its points', () => {
    const curve = gridOf({ axes: [{ setting: 'charge.mass', from: 1, to: 2, points: 20 }] });
    const known = new Map<number, Region>();
    for (let wave = pointsWanted(curve, known); wave.length > 0; wave = pointsWanted(curve, known))
      for (const point of wave) known.set(point, 'sound');
    expect(known.size).toBe(20);
  });
});
