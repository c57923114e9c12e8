import { edgeBetween } from '$src/core/elementary/edgeBetween';
import type { Feeding } from '$src/core/heat/afterFill';
import { basinCapacity } from '$src/core/level/basinCapacity';
import { heldAtEnd } from '$src/core/level/heldAtEnd';
import type { PourPlan } from '$src/core/pour/plan';
import { wholeVolume } from '$src/core/section/cavity';
import { endOf } from '$src/core/tilt/endOf';
import { fromCubicCentimetres, toCubicCentimetres } from '$src/core/units';
import { angleText, fixed } from './wording';

/** Finer than the whole cubic centimetre that is told [m³]. */
const FINENESS = 1e-9;
/** Less than a drop [m³]. */
const ROUNDING = 5e-8;

/** What the feeder lacks [cm³]; null where that is not told. */
const shortOf = (feeding: Feeding | null): number | null =>
  feeding && toCubicCentimetres(feeding.demand - feeding.supply);

/** Many times what is lacking reads as a slip, so it is told why. */
function whyMore(more: number, lacking: number | null): string {
  if (lacking === null || lacking <= 0 || more < 2 * lacking) return ', for what is added shrinks too';
  const share = Math.max(1, Math.round((100 * lacking) / more));
  return `: of what is added only about ${share} % feeds, for the feeder gives a small part of itself and shrinks too`;
}

/**
 * How much more to ladle until the feeder of a pour has metal enough, or what keeps any charge from it. What is added
 * shrinks as well and gives a share of itself only, so that it takes several times what is lacking.
 *
 * @param left metal of it still in basin and die [m³]
 * @param judge the feeder over so much metal left in basin and die [m³]; null where nothing is over the mouth
 */
export function ladleMoreText(
  { section, volume, tilt, liquid }: PourPlan,
  left: number,
  judge: (left: number) => Feeding | null,
): string {
  const most = wholeVolume(section);
  const isEnough = (amount: number): boolean => judge(amount)?.enough.metal ?? false;
  if (!isEnough(most))
    return 'No charge gives it enough, for too little stands under the roof over the mouth: raise that roof, let it reach further back, or make the basin wider.';
  const more = Math.ceil(toCubicCentimetres(edgeBetween(isEnough, most, left, FINENESS) - left));
  const charge = volume + fromCubicCentimetres(more);
  const text = `${more} cm³ more (${fixed(Math.ceil(fromCubicCentimetres(more) * liquid.density * 100) / 100, 2)} kg), skull not counted`;
  const end = endOf(tilt);
  if (heldAtEnd(section, charge, tilt.start, end).spilled > ROUNDING)
    return `It takes ${text}, and that spills over a rim on the way to ${angleText(end, 0)}: roof more of the basin, or make it wider.`;
  const held = basinCapacity(section, tilt.start);
  if (charge > held + ROUNDING)
    return `It takes ${text}, and at ${angleText(tilt.start)} the basin holds ${fixed(toCubicCentimetres(held), 0)} cm³ of those ${fixed(toCubicCentimetres(charge), 0)} cm³: make it deeper, longer or wider.`;
  const isLasting = judge(left + charge - volume)?.enough.time;
  return `Ladle ${text}${whyMore(more, shortOf(judge(left)))}${isLasting ? '' : '; it still freezes too soon then'}.`;
}
