import { GRAVITY } from '$src/core/gravity';
import type { Mesh } from '$src/core/mesh/mesh';
import { type ContractionWatch, watchContraction } from '$src/core/watch/contraction';
import { type FillWatch, watchFill } from '$src/core/watch/fill';
import { type FrontWatch, watchFront } from '$src/core/watch/front';
import { watchImpact } from '$src/core/watch/impact';
import { watchReturnWave } from '$src/core/watch/returnWave';
import type { Watcher } from '$src/core/watch/watcher';
import type { PourPlan } from './plan';

export interface Watchers {
  readonly front: FrontWatch;
  readonly fill: FillWatch;
  readonly contraction: ContractionWatch;
  /** In the order they look. */
  readonly all: readonly Watcher[];
}

/** Everyone who watches a pour. The front looks first: what comes after asks where it is. */
export function makeWatchers(mesh: Mesh, plan: PourPlan): Watchers {
  const { liquid } = plan;
  const dieLength = mesh.facePlace[mesh.cells]!;
  const front = watchFront(dieLength, liquid.criticalSpeed, liquid.surfaceTension, liquid.density, GRAVITY);
  const fill = watchFill();
  const contraction = watchContraction(dieLength);
  return {
    front,
    fill,
    contraction,
    all: [
      front,
      fill,
      watchImpact(liquid.criticalSpeed, GRAVITY),
      watchReturnWave(liquid.criticalSpeed, GRAVITY),
      contraction,
    ],
  };
}
