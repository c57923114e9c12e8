import type { Issue } from '$src/core/issue';
import type { Computation } from '$src/core/pour/plan';

export const MESH_CELLS_RANGE = { least: 20, most: 2000 } as const;
export const SETTLING_TIME_RANGE = { least: 0, most: 60 } as const;

/** What is wrong with the settings of the computation; paths start at the pour cell, e.g. `computation.meshCells`. */
export function checkComputation({ meshCells, settlingTime }: Computation): Issue[] {
  const issues = checkMeshCells(meshCells, 'computation.meshCells');
  if (!(settlingTime >= SETTLING_TIME_RANGE.least && settlingTime <= SETTLING_TIME_RANGE.most)) {
    issues.push({
      path: 'computation.settlingTime',
      message: 'The settling time is out of range.',
      remedy: `Give ${SETTLING_TIME_RANGE.least} to ${SETTLING_TIME_RANGE.most} s.`,
    });
  }
  return issues;
}

/** What is wrong with a number of mesh cells that stands under that path. */
export function checkMeshCells(meshCells: number, path: string): Issue[] {
  const { least, most } = MESH_CELLS_RANGE;
  if (Number.isInteger(meshCells) && meshCells >= least && meshCells <= most) return [];
  return [
    {
      path,
      message: `${meshCells} mesh cells cannot be used.`,
      remedy: `Give a whole number from ${least} to ${most}; 400 for a run, 100 for a quick look.`,
    },
  ];
}
