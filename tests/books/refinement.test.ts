import { describe, expect, it } from 'vitest';
import { evaluateBook } from '$src/cells/evaluate';
import type { Cell, PourCell } from '$src/cells/kinds';
import { holds, isReport, short } from '$src/verify/finding';
import type { MeshPair } from '$src/verify/meshPair';
import { type NamedPlan, onBothMeshes, refinementFindings } from '$src/verify/refinement';
import { buffersOf } from '$src/worker/buffersOf';
import { computed } from './computed';
import { levelOrUphill } from './sources/levelOrUphill';

/** The first book's pours on two meshes; the other books have their table in docs/verification.md. */

const isPour = (cell: Cell): cell is PourCell => cell.kind === 'pour';
const evaluations = evaluateBook(levelOrUphill);
const pours = levelOrUphill.cells.filter(isPour).map(({ id, name }): NamedPlan => {
  const evaluation = evaluations.get(id);
  if (evaluation?.state !== 'needs a run') throw new Error(`${name} is ${evaluation?.state}.`);
  return { book: levelOrUphill.title, pour: name, plan: evaluation.plan };
});

/** Each pour is run once on each mesh, however many tests read it. */
const pairs = new Map<string, MeshPair>();
function pairOf({ pour, plan }: NamedPlan): MeshPair {
  const pair = pairs.get(pour) ?? onBothMeshes(plan, computed);
  pairs.set(pour, pair);
  return pair;
}

describe('front figures and folds do not depend on the mesh (a converged figure; bars of the project)', () => {
  it.each(pours)('$pour at 200 and 400 mesh cells', { timeout: 120_000 }, (pour) => {
    const findings = refinementFindings(pour, pairOf(pour), {}).filter((finding) => !isReport(finding));
    expect(findings.length).toBeGreaterThan(2);
    const missing = findings.filter((finding) => !holds(finding));
    expect(missing.map(({ what, found, bar }) => `${what}: ${short(found)}, bar ${bar}`)).toEqual([]);
  });
});

describe('a record', () => {
  it.each(pours)('of $pour holds at most 5 MB at 400 mesh cells', { timeout: 120_000 }, (pour) => {
    const record = pairOf(pour).fine;
    const bytes = buffersOf(record).reduce((sum, buffer) => sum + buffer.byteLength, 0);
    const { depth, time } = record.frames;
    expect(depth.shape[0]).toBe(time.length);
    expect(depth.shape[1]).toBeGreaterThan(390);
    expect(bytes).toBeGreaterThan(3 * depth.data.byteLength);
    expect(bytes).toBeLessThanOrEqual(5e6);
  });
});
