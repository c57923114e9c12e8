import fc from 'fast-check';
import { expect, test } from 'vitest';
import { columnLevels } from '$src/core/level/columnVolume';
import { CHORD2, CHORD3, FIGURES, makeLevels, rotateLevels, Z1, Z2, Z3, Z4 } from '$src/core/mesh/levels';
import { buildMesh } from '$src/core/mesh/mesh';
import { fromDegrees } from '$src/core/units';
import { anySection } from './levelFillSections';

test('the solver and the level fill store metal alike: two separate writings of the same geometry', () => {
  fc.assert(
    fc.property(anySection, fc.integer({ min: -90, max: 75 }), (section, angle) => {
      const mesh = buildMesh(section, 40);
      const levels = makeLevels(mesh.cells);
      const sin = Math.sin(fromDegrees(angle));
      const cos = Math.max(0, Math.cos(fromDegrees(angle)));
      rotateLevels(levels, mesh, sin, cos);
      let worst = 0;
      for (let i = 0; i < mesh.cells; i++) {
        const shape = {
          left: mesh.x[i]!,
          right: mesh.x[i + 1]!,
          floorLeft: mesh.floorLeft[i]!,
          floorRight: mesh.floorRight[i]!,
          roofLeft: mesh.roofLeft[i]!,
          roofRight: mesh.roofRight[i]!,
          widthLeft: mesh.widthLeft[i]!,
          widthRight: mesh.widthRight[i]!,
        };
        const { z1, z2, z3, z4, w2, w3, full } = columnLevels(shape, sin, cos);
        const at = (figure: number) => levels[i * FIGURES + figure]!;
        const elevations = [at(Z1) - z1, at(Z2) - z2, at(Z3) - z3, at(Z4) - z4];
        const chords = [at(CHORD2) / w2 - 1, at(CHORD3) / w3 - 1, mesh.volume[i]! / full - 1];
        worst = Math.max(worst, ...elevations.map(Math.abs), ...chords.map(Math.abs));
      }
      expect(worst).toBeLessThan(1e-9);
    }),
    { seed: 3131, numRuns: 100, endOnFailure: true },
  );
});
