import { describe, expect, test } from 'vitest';
import { type LevelPath, levelPath } from '$src/core/level/levelPath';
import { fromDegrees, toDegrees, toMillimetres } from '$src/core/units';
import { sectionOf } from './levelFillSections';
import { B04, B05, B05b } from './levelFillTables';

// Source of all three tables: derived; geometry. See levelFillTables.ts.

/** The path's last sample when it is turned from level to so many degrees down. */
const turned = (section: Parameters<typeof levelPath>[0], volume: number, angle: number): LevelPath =>
  levelPath(section, volume, 0, -fromDegrees(angle), null);

describe('B04: level in a turned rectangle', () => {
  const length = toMillimetres(B04.length);
  const box = sectionOf(
    [
      [0, 0],
      [length, 0],
    ],
    [
      [0, 2000],
      [length, 2000],
    ],
    length / 2,
  );
  test.each(B04.rows)('%f° down', (angle, atRaised, atLowered, dry, wet, _surface, over) => {
    const [pool] = turned(box, B04.area, angle).pools.at(-1)!;
    const inclination = -fromDegrees(angle);
    const depthAt = (x: number) =>
      Math.max(0, (pool!.level - x * Math.sin(inclination)) / Math.cos(inclination));
    expect(Math.abs(depthAt(0) - atRaised)).toBeLessThan(1e-9);
    expect(Math.abs(depthAt(B04.length) - atLowered)).toBeLessThan(1e-9);
    expect(Math.abs(pool!.from - dry)).toBeLessThan(1e-9);
    expect(Math.abs(pool!.to - pool!.from - wet)).toBeLessThan(1e-9);
    expect(Math.abs(pool!.level - over)).toBeLessThan(1e-9);
  });
});

describe('B05: angle at which a rectangular basin starts to pour over its lip', () => {
  test.each(B05.rows)('length %f m, depth %f m, filled %f', (length, depth, fill, angle) => {
    const [l, d] = [toMillimetres(length), toMillimetres(depth)];
    const section = sectionOf(
      [
        [0, 0],
        [l, 0],
        [l, d],
        [2 * l, d],
      ],
      [
        [0, 3 * d],
        [2 * l, 3 * d],
      ],
      l,
    );
    const { firstFlow } = levelPath(
      section,
      fill * length * depth * (1 - 1e-15),
      fromDegrees(0.5),
      fromDegrees(-89),
      null,
    );
    if (angle === 0) {
      // Brim-full at level: it stands over the lip while the die still runs uphill.
      expect(firstFlow.kind).not.toBe('never');
      return;
    }
    expect(firstFlow.kind).toBe('angle');
    const found = firstFlow.kind === 'angle' ? -toDegrees(firstFlow.inclination) : Number.NaN;
    expect(Math.abs(found - angle)).toBeLessThan(1e-6);
  });
});

describe('B05b: metal left in a brim-full rectangular basin that pours over its rim', () => {
  const [l, d] = [toMillimetres(B05b.length), toMillimetres(B05b.depth)];
  const basin = sectionOf(
    [
      [0, 0],
      [l, 0],
    ],
    [
      [0, d],
      [l, d],
    ],
    l / 2,
    [{ wall: 'roof', from: 0, to: 1 }],
  );
  const full = B05b.length * B05b.depth;
  test.each(B05b.rows)('%f° down', (angle, left) => {
    const path = turned(basin, full, angle);
    const spilled = path.spilled.at(-1)!;
    const held = path.pools.at(-1)!.reduce((sum, pool) => sum + pool.volume, 0);
    expect(Math.abs(full - spilled - left)).toBeLessThan(1e-9);
    expect(Math.abs(held - left)).toBeLessThan(1e-9);
  });
});
