import type { Flow } from '$src/core/flow/flow';
import { GRAVITY } from '$src/core/gravity';
import type { Heat } from '$src/core/heat/heat';
import type { Mesh } from '$src/core/mesh/mesh';
import { watchBores } from '$src/core/watch/bores';
import { type ContractionWatch, watchContraction } from '$src/core/watch/contraction';
import { type FillWatch, watchFill } from '$src/core/watch/fill';
import { type FrontWatch, watchFront } from '$src/core/watch/front';
import { watchGas } from '$src/core/watch/gasPockets';
import { type GasWayWatch, watchGasWay } from '$src/core/watch/gasWay';
import { watchImpact } from '$src/core/watch/impact';
import { watchLips } from '$src/core/watch/lips';
import { watchMeetings } from '$src/core/watch/meetings';
import { watchStalls } from '$src/core/watch/stalls';
import type { Watcher } from '$src/core/watch/watcher';
import type { PourPlan } from './plan';
import { type HeatWatch, watchHeat } from './watchHeat';

export interface Watchers {
  readonly front: FrontWatch;
  readonly fill: FillWatch;
  readonly contraction: ContractionWatch;
  readonly heat: HeatWatch;
  readonly gasWay: GasWayWatch;
  /** In the order they look. */
  readonly all: readonly Watcher[];
}

/** Everyone who watches a pour. The order is free but for reading: each remembers only what it saw itself. */
export function makeWatchers(mesh: Mesh, plan: PourPlan, flow: Flow, heat: Heat | null): Watchers {
  const { liquid } = plan;
  const dieLength = mesh.facePlace[mesh.cells]!;
  const { criticalSpeed } = liquid;
  const front = watchFront(dieLength, liquid);
  const fill = watchFill();
  const contraction = watchContraction(dieLength);
  const watch = watchHeat(plan, flow, heat, mesh);
  const gasWay = watchGasWay();
  const all: Watcher[] = [
    front,
    fill,
    watchLips(mesh, criticalSpeed),
    watchImpact(mesh, criticalSpeed),
    watchBores(criticalSpeed),
    watchMeetings(criticalSpeed),
    watchStalls(),
    watchGas(mesh, liquid.density, GRAVITY),
    gasWay,
    contraction,
    watch,
  ];
  return { front, fill, contraction, heat: watch, gasWay, all };
}
