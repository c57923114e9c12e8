import type { StudyCell } from '$src/cells/kinds';
import { ownMeshWords } from '$src/report/study/ownMesh';
import { pointResult } from '$src/report/study/pointFigures';
import { bench } from '../bench.svelte';
import type { StudyRun } from './studyRun.svelte';

/** Said where the pour itself, run as it now stands, comes to another verdict on its own mesh than on that of the study; else empty. */
export function onOwnMesh(cell: StudyCell, { setResult, base }: StudyRun): string {
  const pour = cell.pour === null ? null : bench.run(cell.pour);
  const record = pour?.current && !pour.coarse ? pour.record : null;
  return ownMeshWords(setResult, record && pointResult(record), base.computation.meshCells);
}
