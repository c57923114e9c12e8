import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { writeBook } from '$src/book/writeBook';
import { MESH_CELLS_RANGE } from '$src/cells/checkComputation';
import { addCell } from '$src/cells/edit';
import type { Book, Cell } from '$src/cells/kinds';
import { withLimits } from '$src/cells/machineLimits';
import { newCell } from '$src/cells/newCell';
import { FLUSH_BASIN, flushBasin } from '$src/core/section/shapes';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import { fromMillimetres } from '$src/core/units';
import { gridOf } from '$src/report/study/grid';
import { filledMap, pointsWanted } from '$src/report/study/refine';
import type { Region } from '$src/report/study/region';
import { sampleBook } from '../book/sample';

/** Builds itself first when its sources have changed. */
const COMMAND = fileURLToPath(new URL('../../src/setup/quietpour.js', import.meta.url));

/** As wide as it is everywhere, with a basin long enough to be made shorter; what a new book begins with is another matter. */
const section = flushBasin({
  ...FLUSH_BASIN,
  basinDepth: fromMillimetres(100),
  basinWidth: fromMillimetres(40),
  cavityWidth: fromMillimetres(40),
});
const charge = { by: 'head', head: fromMillimetres(20) } as const;

/**
 * The coarsest mesh, quick strokes and a short look after them, so that 400 pours take seconds; the physics is the same, the
 * picture coarser. Five regions meet on this map, along slanted and stepped edges.
 */
const axes = [
  { setting: 'tilt.time', from: 1.2, to: 5, points: 20 },
  { setting: 'basin.length', from: fromMillimetres(105), to: fromMillimetres(200), points: 20 },
];
const computation = { meshCells: MESH_CELLS_RANGE.least, capillaryGate: true, settlingTime: 0.5 };
const grid = gridOf({ axes });

function studyBook(): Book {
  const book = sampleBook();
  const cells = book.cells.map((cell): Cell => {
    if (cell.kind === 'section') return { ...cell, section };
    if (cell.kind === 'charge') return { ...cell, charge };
    return cell.kind === 'pour' ? { ...cell, computation } : cell;
  });
  // Strokes this quick are past what a new tilt's machine can do.
  const tilts = cells.filter(({ kind }) => kind === 'tilt').map(({ id }) => id);
  const sample = withLimits({ ...book, cells }, tilts, WIDEST_LIMITS);
  const study = newCell('study', sample);
  if (study.kind !== 'study') throw new Error('A new study is a study.');
  return addCell(sample, {
    ...study,
    name: 'Window',
    pour: 'pour-1',
    study: { ...study.study, axes, meshCells: computation.meshCells },
  });
}

/** Every point poured by the command line, which interpolates none. */
function bruteRegions(): Region[] {
  const folder = mkdtempSync(join(tmpdir(), 'quietpour-agreement-'));
  try {
    const book = join(folder, 'study.pourbook.json');
    writeFileSync(book, writeBook(studyBook()));
    execFileSync(process.execPath, [COMMAND, 'study', book, '--cell', 'Window', '--out', folder]);
    const written = readdirSync(folder).find((name) => name.endsWith('-window-map.json'))!;
    const { points } = JSON.parse(readFileSync(join(folder, written), 'utf8'));
    return (points as { verdict: Region }[]).map(({ verdict }) => verdict);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe('a refined map of 20 × 20 against the same map by brute force', () => {
  it('agrees in 98 points of a hundred', () => {
    const brute = bruteRegions();
    expect(brute).toHaveLength(grid.count);
    const known = new Map<number, Region>();
    for (let wave = pointsWanted(grid, known); wave.length > 0; wave = pointsWanted(grid, known))
      for (const point of wave) known.set(point, brute[point]!);
    const filled = filledMap(grid, known)!;
    const agreeing = filled.filter(({ region }, point) => region === brute[point]).length;
    expect(new Set(brute).size).toBeGreaterThanOrEqual(5);
    expect(agreeing / grid.count).toBeGreaterThanOrEqual(0.98);
    expect(known.size).toBeLessThan(grid.count);
  });
});
