import type { Columns } from './columns';
import { bottomOf, type Terrain } from './terrain';

/**
 * Lab elevation of the lip at this inclination [m]: the highest floor metal must pass between where it is ladled
 * and the mouth. `bottomColumn` is the column it is ladled into.
 */
export function lipElevation(columns: Columns, terrain: Terrain, bottomColumn: number): number {
  let lip = bottomOf(terrain, bottomColumn, bottomColumn);
  for (
    let i = bottomColumn + 1;
    i < terrain.columns.length && terrain.columns[i]!.left <= columns.mouth + 1e-9;
    i++
  ) {
    lip = Math.max(lip, terrain.sills[i]!);
  }
  return lip;
}
