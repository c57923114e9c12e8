import { expect, test } from 'vitest';
import type { Mesh } from '$src/core/mesh/mesh';
import { watchImpact } from '$src/core/watch/impact';
import type { Sample } from '$src/core/watch/sample';

const LENGTH = 0.1;
const CRITICAL = 0.5;
const mesh = { cells: 1, roofRight: [0.03], floorRight: [0] } as unknown as Mesh;

/** Metal of this depth under a roof of 30 mm, running with this speed up to the front; by the wall it may stand already. */
function sampleOf(front: number, depth: number, speed: number, stoppedFrom = LENGTH): Sample {
  const places = 21;
  const spacing = 5e-3;
  const at = (value: (place: number) => number) =>
    Float64Array.from({ length: places }, (_, k) => value(k * spacing));
  const profile = {
    places,
    spacing,
    depth: at((place) => (place <= front ? depth : 0)),
    speed: at((place) => (place <= front && place < stoppedFrom ? speed : 0)),
    opening: at(() => 0.03),
  };
  return { time: front, inclination: 0, front, dieLength: LENGTH, profile } as unknown as Sample;
}

test('what a front strikes the wall with is read before the wall has stopped it', () => {
  const watch = watchImpact(mesh, CRITICAL);
  watch.look(sampleOf(0.05, 0.01, 0.8));
  watch.look(sampleOf(0.098, 0.01, 0.8));
  watch.look(sampleOf(LENGTH, 0.01, 0.8, 0.09));
  const [fold] = watch.folds();
  expect(fold?.severity.value).toBeCloseTo(0.8, 10);
  expect(fold?.details['depth_m']).toBeCloseTo(0.01, 10);
});

test('a front as high as its opening has no room to climb the wall and fall back', () => {
  const watch = watchImpact(mesh, CRITICAL);
  watch.look(sampleOf(0.098, 0.029, 0.8));
  watch.look(sampleOf(LENGTH, 0.029, 0.8));
  expect(watch.folds()).toEqual([]);
});

test.each([
  [0.26, 0.01, false],
  [0.31, 0.01, true],
  [0.31, 0.026, false],
])(
  'at %f m/s, %f m deep of 0.03: clear of half of critical and of nine tenths full is %s',
  (speed, depth, isClear) => {
    const watch = watchImpact(mesh, CRITICAL);
    watch.look(sampleOf(0.098, depth, speed));
    watch.look(sampleOf(LENGTH, depth, speed));
    expect(watch.folds().map((fold) => fold.isClear)).toEqual([isClear]);
  },
);
