import { expect, test } from 'vitest';
import { meshDifference } from '$src/report/study/meshDifference';
import type { PointFigures } from '$src/report/study/pointFigures';

const coarse: PointFigures = {
  outcome: 'filled and quiet',
  verdict: 'sound',
  shortage: null,
  cut: null,
  isFeederJudged: false,
  cause: null,
  folds: 0,
  lap: { kind: 'none', margin: 8.34 },
  firstFlow: 0.2,
  shareAtStart: 0,
  peakFrontSpeed: 0.38,
  criticalSpeed: 0.5,
  shareAboveCritical: 0,
  arrivalTime: 2,
  filledTime: 3.15,
  fillTime: 2,
  finalShare: 1,
  spill: { volume: 0, isByLevel: false },
  skinFolded: 0,
  foldScore: 0,
};

test('what two meshes make of the setting is told in their own figures, and only what reads differently', () => {
  const fine: PointFigures = { ...coarse, lap: { kind: 'none', margin: 1 }, verdict: 'near the limit' };
  expect(meshDifference(coarse, fine)).toBe(
    'At the setting: sound there, near a limit in the pour; left before freezing 8.34 s there, 1.00 s in the pour.',
  );
  expect(meshDifference(coarse, { ...coarse, peakFrontSpeed: 0.381 })).toBe(
    'At the setting the two read the same.',
  );
  expect(meshDifference(coarse, { ...coarse, filledTime: null })).toBe(
    'At the setting: full at 3.15 s there, not full in the pour.',
  );
});
