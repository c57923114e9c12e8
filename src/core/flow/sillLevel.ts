import type { Mesh } from '$src/core/mesh/mesh';
import type { Forces } from './forces';

/** Elevation of the sill of face j at the inclination of the step [m]. */
export function sillLevel({ x, sill }: Mesh, { sin, cos }: Pick<Forces, 'sin' | 'cos'>, j: number): number {
  return x[j]! * sin + sill[j]! * cos;
}
