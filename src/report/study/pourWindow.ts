import { PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import { fromDegrees } from '$src/core/units';
import type { Study } from './study';

/** Start angle against tilt time: what is left between folding and lapping. */
export const POUR_WINDOW: Study = {
  axes: [
    { setting: 'tilt.time', from: 2, to: 18, points: 20 },
    { setting: 'tilt.start', from: fromDegrees(-10), to: fromDegrees(45), points: 20 },
  ],
  figure: 'peakFrontSpeed',
  meshCells: PREVIEW_MESH_CELLS,
  repeatability: [],
};
