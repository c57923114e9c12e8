import type { Section } from '$src/core/section/section';
import { type Columns, columnsOf } from './columns';
import { fullVolume } from './columnVolume';
import { turnable } from './terrain';
import { ladle } from './tiltTo';

/**
 * Metal that stands behind the mouth at an inclination before any passes it [m³], with a level surface and no
 * capillary stand. 0 when the floor lets everything run on.
 */
export function basinCapacity(section: Section, inclination: number): number {
  const whole = columnsOf(section);
  const basin = basinOnly(whole);
  if (basin.columns.length === 0) return 0;
  const metal = 2 * basin.columns.reduce((sum, column) => sum + fullVolume(column), 0);
  const { rest } = ladle({ columns: basin, turnable: turnable(basin), metal, stand: null }, inclination);
  return metal - rest.spilled;
}

/** The columns behind the mouth, with the mouth as a rim where metal leaves. */
function basinOnly(whole: Columns): Columns {
  const count = whole.columns.filter((column) => column.right <= whole.mouth + 1e-9).length;
  const last = count - 1;
  const passage = {
    sill: whole.sills[count] ?? Number.POSITIVE_INFINITY,
    top: whole.tops[count] ?? Number.POSITIVE_INFINITY,
  };
  return {
    columns: whole.columns.slice(0, count),
    sills: whole.sills.slice(0, count),
    tops: whole.tops.slice(0, count),
    isOpen: whole.isOpen.slice(0, count),
    rims: [
      ...whole.rims.filter((rim) => rim.column < count),
      { column: last, x: whole.mouth, y: passage.sill },
      { column: last, x: whole.mouth, y: passage.top },
    ],
    mouth: whole.mouth,
  };
}
