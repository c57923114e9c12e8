import type { Freezing } from './freezing';
import { biotNumber, type Contact, modulusPower, timeToSolidFraction } from './freezingTime';
import { feedPerSolidVolume, shrinkageToFeed } from './shrinkage';

/** One part of the casting, or the feeder, once everything stands still: volume [m³], modulus [m], its coat and die. */
export interface Part {
  readonly name: string;
  readonly volume: number;
  readonly modulus: number;
  readonly contact: Contact;
  /** Metal when the fill ends [K]. */
  readonly temperature: number;
  /** Transfer once a gap has opened, and the solid fraction at which it does; null = the contact stays. */
  readonly gap: { readonly transfer: number; readonly solidFraction: number } | null;
}

export interface FreezingOfPart {
  readonly name: string;
  /** Time to all solid from the end of the fill [s]; Infinity when the die is too hot. */
  readonly time: number;
  /** h M/k, and the power of the modulus the time follows at that: 1 coat, 2 metal. */
  readonly biot: number;
  readonly power: number;
}

/**
 * Freezing time of a part, interface-limited and so linear in its modulus. As h M/k grows the time drifts towards the
 * square of the modulus; `power` says how far, and over about 1.1 the time shown is short by the same measure.
 */
export function freezePart(freezing: Freezing, part: Part, solidConductivity: number): FreezingOfPart {
  const biot = biotNumber(part.contact.transfer, part.modulus, solidConductivity);
  return { name: part.name, time: partTime(freezing, part), biot, power: modulusPower(biot) };
}

function partTime(freezing: Freezing, part: Part): number {
  const { modulus, temperature, contact, gap } = part;
  const all = timeToSolidFraction(freezing, modulus, temperature, contact, 1);
  if (gap === null) return all;
  const touching = timeToSolidFraction(freezing, modulus, temperature, contact, gap.solidFraction);
  const open = all - touching;
  return touching + (open * contact.transfer) / gap.transfer;
}

/** Feeder against casting: on time, and on metal. */
export interface Feeding {
  /** Freezing time of the feeder over that of the slowest part it feeds. */
  readonly timeRatio: number;
  /** Volume to be fed, the feeder's own shrinkage with that of the die, and what the feeder can give [m³]. */
  readonly demand: number;
  /** Of the demand, what the feeder itself loses: it grows with the charge, that of the die does not. */
  readonly ownDemand: number;
  readonly supply: number;
  readonly enough: { readonly time: boolean; readonly metal: boolean };
}

/** Wanted of the ratio of freezing times: 1.2 to 1.4, put on time because times are linear in modulus here. Our judgement. */
export const WANTED_TIME_RATIO = 1.2;

/**
 * @param efficiency share of its own volume that the feeder can give, see FEEDER_EFFICIENCY
 * @throws RangeError without parts to feed
 */
export function judgeFeeding(
  freezing: Freezing,
  parts: readonly Part[],
  feeder: Part,
  freezingShrinkage: number,
  efficiency: number,
): Feeding {
  if (parts.length === 0) throw new RangeError('feeding: got no parts, expected one or more');
  const slowest = Math.max(...parts.map((part) => partTime(freezing, part)));
  const timeRatio = partTime(freezing, feeder) / slowest;
  const shrinkageOf = (part: Part) =>
    shrinkageToFeed(freezingShrinkage, part.temperature - freezing.liquidus);
  const ownDemand = feeder.volume * shrinkageOf(feeder);
  const demand =
    parts.reduce((sum, part) => sum + part.volume * feedPerSolidVolume(shrinkageOf(part)), 0) + ownDemand;
  const supply = efficiency * feeder.volume;
  return {
    timeRatio,
    demand,
    ownDemand,
    supply,
    enough: { time: timeRatio >= WANTED_TIME_RATIO, metal: supply >= demand },
  };
}
