import { volumeFromHead } from '$src/core/level/head';
import { liquidOf } from '$src/core/metal/liquidOf';
import { metalNamed } from '$src/core/metal/metals';
import { DEFAULT_COMPUTATION, type PourPlan } from '$src/core/pour/plan';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { armBehind, steady } from '../../books/sources/shop';

export const section = armBehind({ length: 115, pit: 0, open: 50 });
export const start = fromDegrees(30);
export const end = fromDegrees(-90);

/** A356 behind the flush basin of the example books, with 22 mm of head at the end, turned quickly. */
export const armPour = (meshCells: number): PourPlan => ({
  section,
  liquid: liquidOf(metalNamed('A356')!),
  volume: volumeFromHead(section, start, end, fromMillimetres(22))!,
  tilt: steady(30, 60),
  computation: { ...DEFAULT_COMPUTATION, meshCells },
});
