import type { MeshOutline } from '$src/core/pour/record';

/** Mean height between floor and roof in a mesh cell of a record [m]. */
export const openingAt = (
  { floorLeft, floorRight, roofLeft, roofRight }: MeshOutline,
  cell: number,
): number => (roofLeft[cell]! + roofRight[cell]! - floorLeft[cell]! - floorRight[cell]!) / 2;
