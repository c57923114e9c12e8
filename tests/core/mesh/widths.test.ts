import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wallsOf } from '$src/core/heat/contactArea';
import { buildMesh } from '$src/core/mesh/mesh';
import { mirrorMesh } from '$src/core/mesh/mirror';
import { wholeVolume } from '$src/core/section/cavity';
import type { Section } from '$src/core/section/section';
import { widthAt } from '$src/core/section/widthAt';
import { sections, tries } from '../flow/randomPours';

/** Roofed, so that the mesh holds what the section holds and no virtual roof counts. */
const roofed = sections.map((section): Section => ({ ...section, openings: [] }));
const meshCells = fc.integer({ min: 10, max: 150 });

test('the mesh of any section holds what the section holds, tapers with it', () => {
  fc.assert(
    fc.property(roofed, meshCells, (section, cells) => {
      const { volume } = buildMesh(section, cells);
      const whole = wholeVolume(section);
      expect(Math.abs(volume.reduce((sum, one) => sum + one, 0) / whole - 1)).toBeLessThan(1e-12);
    }),
    tries(100),
  );
});

test('a face is as wide as the section there; at a step in width, as its narrower side', () => {
  fc.assert(
    fc.property(roofed, meshCells, (section, cells) => {
      for (const mesh of [buildMesh(section, cells), mirrorMesh(buildMesh(section, cells))])
        for (let j = 1; j < mesh.cells; j++) {
          const sides = [widthAt(section, mesh.x[j]!, 'left'), widthAt(section, mesh.x[j]!, 'right')];
          expect(mesh.faceWidth[j]).toBeCloseTo(Math.min(...sides), 7);
        }
    }),
    tries(30),
  );
});

/** A channel 200 mm long and 30 mm high that widens from 20 to 80 mm, two of them side by side. */
const FAN: Section = {
  floor: [
    { x: 0, y: 0 },
    { x: 0.3, y: 0 },
  ],
  roof: [
    { x: 0, y: 0.03 },
    { x: 0.3, y: 0.03 },
  ],
  openings: [],
  regions: [
    { name: 'basin', end: 0.1, width: 0.04 },
    { name: 'fan', end: 0.3, width: 0.02, widthAtEnd: 0.08 },
  ],
  mouth: 0.1,
  cavities: 2,
  pivot: { x: 0, y: 0 },
  vents: [],
};

test('walls of a fan by hand: floor and roof by the mean width, sides along their slant', () => {
  const mesh = buildMesh(FAN, 60);
  const walls = wallsOf(mesh, FAN.cavities);
  let [flat, sides] = [0, 0];
  for (let i = mesh.mouthFace; i < mesh.cells; i++) {
    flat += walls.floor[i]! + walls.roof[i]!;
    sides += walls.sidesPerVolume[i]! * mesh.volume[i]!;
  }
  expect(flat).toBeCloseTo(2 * 2 * 0.2 * 0.05, 12);
  expect(sides).toBeCloseTo(2 * 2 * 0.03 * Math.hypot(0.2, 0.03), 12);
});
