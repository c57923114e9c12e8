import { describe, expect, test } from 'vitest';
import { GRAVITY } from '$src/core/gravity';
import { firstFlowBand } from '$src/core/level/firstFlowBand';
import { type LevelPath, levelPath } from '$src/core/level/levelPath';
import { openStandDepth, standOf } from '$src/core/level/stand';
import { fromDegrees, fromMillimetres, toDegrees, toMillimetres } from '$src/core/units';
import { deepBasin, pitBasin, sectionOf } from './levelFillSections';

/**
 * Closed forms of the level fill in a straight die with a flush floor, uphill, with and without the capillary stand.
 * Source: derived; geometry, with the puddle height of de Gennes, Brochard-Wyart & Quéré 2004 (from memory).
 */
const liquid = { density: 2400, surfaceTension: 0.9, contactAngle: fromDegrees(150) };
const stand = standOf(liquid);
const AREA = 6900e-6;
const MOUTH = 0.07;
const HEIGHT = 0.03;
const END = 0.2;

/** Front from the mouth at an inclination [rad]: p is where the level meets the roof, x_t the tip of the level wedge. */
function closedForm(inclination: number, depth: number): number {
  const k = 1 / Math.tan(inclination);
  const p = MOUTH + HEIGHT * k;
  const wedge = (2 * AREA + depth ** 2 * k) * k;
  const underRoof = wedge / (2 * p) + p / 2;
  const tip = underRoof > p ? underRoof : Math.sqrt(wedge);
  return tip - depth * k - MOUTH;
}

const pathDown = (held: boolean): LevelPath =>
  levelPath(deepBasin, AREA, fromDegrees(30), fromDegrees(-90), held ? stand : null);
const frontAt = (path: LevelPath, angle: number) =>
  path.front[path.inclination.findIndex((value) => Math.abs(toDegrees(value) - angle) < 1e-9)]!;

describe('front in the deep basin against its closed form', () => {
  const open = pathDown(false);
  const held = pathDown(true);

  test.each([
    [30, 89.0, 68.8],
    [20, 130.6, 100.5],
    [12, 189.3, 140.1],
  ])('at %f°: %f mm, with the stand %f mm', (angle, plain, standing) => {
    expect(Math.abs(toMillimetres(frontAt(open, angle)) - plain)).toBeLessThan(0.05);
    expect(Math.abs(toMillimetres(frontAt(held, angle)) - standing)).toBeLessThan(0.05);
  });

  test('every sample before the die end agrees with the closed form to a nanometre', () => {
    for (const [path, isHeld] of [
      [open, false],
      [held, true],
    ] as const) {
      let compared = 0;
      path.inclination.forEach((inclination, i) => {
        if (path.front[i]! >= END - 1e-6 || inclination <= fromDegrees(1)) return;
        const depth = isHeld ? openStandDepth(stand, Math.cos(inclination)) : 0;
        expect(Math.abs(path.front[i]! - closedForm(inclination, depth))).toBeLessThan(1e-9);
        compared++;
      });
      expect(compared).toBeGreaterThan(70);
    }
  });

  test('the die end is reached at cot φ = 5.128, with the stand near 5.8°', () => {
    const reached = (path: LevelPath) =>
      path.inclination[path.front.findIndex((front) => front >= END - 1e-9)]!;
    expect(Math.abs(1 / Math.tan(reached(open)) - 5.128)).toBeLessThan(0.001);
    expect(Math.abs(toDegrees(reached(held)) - 5.78)).toBeLessThan(0.01);
  });
});

describe('entry over the lip of a box pit', () => {
  /** tan|φ| = (d + h)/(l/2), while the metal still covers the pit's floor; h depends on φ, so it is iterated. */
  function entry(below: number, held: boolean): number {
    let angle = 0;
    for (let i = 0; i < 60; i++) {
      const depth = held ? openStandDepth(stand, Math.cos(angle)) : 0;
      angle = Math.atan((below + depth) / 0.06);
    }
    return angle;
  }

  test.each([
    [true, 12.3],
    [false, 0.95],
  ])('1 mm below the lip, stand %s: %f°', (isHeld, printed) => {
    const { firstFlow } = levelPath(pitBasin, 2880e-6, 0, fromDegrees(-90), isHeld ? stand : null);
    const found = firstFlow.kind === 'angle' ? -firstFlow.inclination : Number.NaN;
    expect(Math.abs(found - entry(fromMillimetres(1), isHeld))).toBeLessThan(3e-9);
    expect(Math.abs(toDegrees(found) - printed)).toBeLessThan(0.01);
  });

  test('the band runs from no stand to metal that wets nothing, with the value between', () => {
    const band = firstFlowBand(pitBasin, liquid, 2880e-6, 0, fromDegrees(-90));
    const angle = (flow: (typeof band)['value']) => (flow.kind === 'angle' ? flow.inclination : Number.NaN);
    expect(angle(band.from)).toBeGreaterThan(angle(band.value));
    expect(angle(band.value)).toBeGreaterThan(angle(band.to));
  });
});

describe('head a front needs to enter a slot', () => {
  // Source: textbook capillary slot, ρ g (head over mid-height) H = 2 γ |cos θ|; from memory.
  test.each([3, 4, 6, 10])('%f mm high', (height) => {
    const slot = sectionOf(
      [
        [0, 0],
        [100, 0],
        [300, 0],
      ],
      [
        [0, 90],
        [100, 90],
        [100, height],
        [300, height],
      ],
      100,
      [{ wall: 'roof', from: 0, to: 1 }],
    );
    const needed =
      (2 * liquid.surfaceTension * Math.abs(Math.cos(liquid.contactAngle))) /
      (liquid.density * GRAVITY * fromMillimetres(height));
    // Nor does it get there before the puddle has covered the open basin's floor.
    const level = Math.max(needed + fromMillimetres(height) / 2, openStandDepth(stand, 1));
    const frontWith = (depth: number) => levelPath(slot, 0.1 * depth, 0, 0, stand).front[0]!;
    expect(frontWith(level * 0.999)).toBeLessThanOrEqual(1e-9);
    expect(frontWith(level * 1.001)).toBeGreaterThan(0);
  });
});
