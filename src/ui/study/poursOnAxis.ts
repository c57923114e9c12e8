import type { StudyCell } from '$src/cells/kinds';
import { readFigure } from '$src/report/study/curve';
import { placeOnAxis } from '$src/report/study/onAxis';
import { pointResult } from '$src/report/study/pointFigures';
import { shownQuantity } from '$src/report/study/quantities';
import { bench } from '../bench.svelte';
import type { StudyRun } from './studyRun.svelte';

/** A pour of the book on a curve, in the units shown. */
export interface PourOnAxis {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** The pour that the study varies. */
  readonly isVaried: boolean;
  /** Mesh cells its figure was computed on. */
  readonly meshCells: number;
}

/**
 * The pours of the book that lie on the axis of a curve: the one that is varied, and those that differ from it in what is
 * varied alone. Figures are those of the pours themselves, on their own mesh; of the one that is varied that of the study
 * while it is not run, and on a curve from before a change.
 */
export function poursOnAxis(cell: StudyCell, run: StudyRun, isOld: boolean): PourOnAxis[] {
  const axis = run.axes[0]!;
  const { toShown } = shownQuantity(axis.quantity, bench.units);
  const [low, high] = [Math.min(axis.from, axis.to), Math.max(axis.from, axis.to)];
  return bench.cellsOfKind('pour').flatMap(({ id, name }) => {
    const isVaried = id === cell.pour;
    const evaluation = bench.evaluation(id);
    if (isOld ? !isVaried : evaluation.state !== 'needs a run') return [];
    const value =
      isVaried || evaluation.state !== 'needs a run'
        ? axis.setPoint
        : placeOnAxis(run.base, axis.setting, evaluation.plan);
    const { record, current, coarse } = bench.run(id);
    const isRun = !isOld && record !== null && current && !coarse;
    const result = isRun ? pointResult(record) : isVaried ? run.setResult : null;
    if (value === null || !result || value < low || value > high) return [];
    const y = readFigure(run.study.figure, result, bench.units);
    if (!Number.isFinite(y)) return [];
    const meshCells = isRun ? record.plan.computation.meshCells : run.study.meshCells;
    return [{ id, name, x: toShown(value), y, isVaried, meshCells }];
  });
}
