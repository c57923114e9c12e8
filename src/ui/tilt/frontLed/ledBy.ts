import type { TiltCell } from '$src/cells/kinds';
import type { FrontLed, PourRecord } from '$src/core/pour/record';
import { bench } from '../../bench.svelte';

/** The pour that a front-led tilt is worked out in. */
export type LedBy =
  | { readonly found: null; readonly reason: string }
  | { readonly found: FrontLed; readonly record: PourRecord; readonly isOld: boolean };

/** What the first pour that takes this tilt made of it; null when none does. */
export function ledBy(cell: TiltCell): LedBy | null {
  const pour = bench.cellsOfKind('pour').find(({ tilt }) => tilt === cell.id);
  if (!pour) return null;
  const { record, current, state, error } = bench.run(pour.id);
  if (record?.frontLed) return { found: record.frontLed, record, isOld: !current };
  if (error) return { found: null, reason: `${pour.name} gave nothing: ${error}` };
  const isComing = state === 'running' || state === 'waiting' || state === 'out of date';
  return {
    found: null,
    reason: isComing
      ? `It is being worked out in ${pour.name}: the level fill first, then up to four corrections in the solver.`
      : `${pour.name} cannot be run yet; see there.`,
  };
}
