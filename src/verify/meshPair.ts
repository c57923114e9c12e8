import type { PourRecord } from '$src/core/pour/record';

/** One pour on two meshes. */
export interface MeshPair {
  readonly coarse: PourRecord;
  readonly fine: PourRecord;
}
