import type { ChargeValue } from '$src/cells/evaluate';
import type { ChargeBy } from '$src/cells/kinds';
import { fromMillimetres, type PageUnits } from '$src/core/units';
import { settable } from '$src/report/study/settable';

/** Just below the lip: where a founder fills to when nothing else is said. */
const BELOW_LIP = fromMillimetres(-1);
const HEAD_WANTED = fromMillimetres(30);
const MASS = 0.5;

/**
 * The same charge told another way, as a shop can set it; when it has no such figure, a usual one. What a rule or a
 * scale cannot tell apart may lie on either side of a rim: where the rounded one does not stand, the exact one is taken.
 */
export function chargeAs(
  by: ChargeBy['by'],
  charge: ChargeBy,
  value: ChargeValue | null,
  units: PageUnits,
  stands: (charge: ChargeBy) => boolean = () => true,
  levels: Levels | null = null,
): ChargeBy {
  if (by === charge.by) return charge;
  const exact = exactly(by, value, levels);
  const rounded = settableCharge(exact, units);
  return stands(rounded) || !stands(exact) ? rounded : exact;
}

/** Lowest and highest level at which metal can stand in the basin [m from the lip]. */
type Levels = readonly [lowest: number, highest: number];

/** The usual level, or the nearest at which metal stands. */
const levelBelowLip = (levels: Levels | null): number =>
  levels ? Math.min(Math.max(BELOW_LIP, levels[0]), levels[1]) : BELOW_LIP;

function exactly(by: ChargeBy['by'], value: ChargeValue | null, levels: Levels | null): ChargeBy {
  if (by === 'mass') return { by, mass: value?.mass ?? MASS };
  if (by === 'fill level') return { by, fromLip: value?.fromLip ?? levelBelowLip(levels) };
  return { by, head: value?.head ?? HEAD_WANTED };
}

/** A charge that was worked out, in the steps of a scale or a rule. */
export function settableCharge(charge: ChargeBy, units: PageUnits): ChargeBy {
  switch (charge.by) {
    case 'mass':
      return { by: 'mass', mass: settable(charge.mass, 'mass', units) };
    case 'fill level':
      return { by: 'fill level', fromLip: settable(charge.fromLip, 'level', units) };
    case 'head':
      return { by: 'head', head: settable(charge.head, 'length', units) };
  }
}

/** What was typed before the charge was told another way, and what it was told as. */
export interface ToldAs {
  readonly typed: ChargeBy;
  readonly told: ChargeBy;
}

/** The charge as it was typed, when what stands there now is only that told another way; else as it stands. */
export const typedCharge = (charge: ChargeBy, toldAs: ToldAs | null): ChargeBy =>
  toldAs && isSame(toldAs.told, charge) ? toldAs.typed : charge;

const isSame = (one: ChargeBy, other: ChargeBy): boolean => JSON.stringify(one) === JSON.stringify(other);
