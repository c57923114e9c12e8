import type { Mesh } from '$src/core/mesh/mesh';
import { enthalpyOf } from './enthalpy';
import { timeToSolidFraction } from './freezingTime';
import type { Heat } from './heat';
import { modulusAbout } from './regionModulus';

/** Time a region took from first contact to full against the time its metal stays able to run. */
export interface FillAgainstFreezing {
  readonly region: number;
  /** First contact of any of its cells, and when the last was full [s]; null = never. */
  readonly firstContact: number | null;
  readonly full: number | null;
  /** The cell that used up most of its time: from its own contact to its own filling [s], and what it had [s]. */
  readonly taken: number | null;
  readonly allowed: number;
  /** taken/allowed of that cell; at 1 and above the section is expected to misrun. null = never full. */
  readonly share: number | null;
  /** Coldest metal in the region at the end [K]; NaN when there is none. */
  readonly coldest: number;
}

/**
 * Section by section: contact to full against the time to coherency at the cell's modulus, coat and die temperature,
 * from the temperature the metal had at the start. What it lost on its way is in the carried heat, not here: this is
 * the check by hand, the temperatures are the computed one.
 */
export function fillAgainstFreezing(
  heat: Heat,
  mesh: Mesh,
  regions: number,
  arrivingTemperature: number,
): FillAgainstFreezing[] {
  return Array.from({ length: regions }, (_, region) => ofRegion(heat, mesh, region, arrivingTemperature));
}

function ofRegion(heat: Heat, mesh: Mesh, region: number, arriving: number): FillAgainstFreezing {
  let firstContact: number | null = null;
  let full: number | null = null;
  let isFull = true;
  let coldest = Number.NaN;
  let worst = {
    taken: null as number | null,
    allowed: Number.POSITIVE_INFINITY,
    share: null as number | null,
  };
  for (let i = 0; i < mesh.cells; i++) {
    if (heat.region[i] !== region || mesh.open[i]) continue;
    const contact = heat.firstContact[i]!;
    const done = heat.fullTime[i]!;
    const here = heat.temperature[i]!;
    if (!(coldest <= here) && !Number.isNaN(here)) coldest = here;
    if (contact >= 0) firstContact = Math.min(firstContact ?? contact, contact);
    if (!(done >= 0)) isFull = false;
    else full = Math.max(full ?? done, done);
    const allowed = allowedTime(heat, mesh, i, arriving);
    const taken = done - contact;
    if (taken >= 0 && taken / allowed >= (worst.share ?? -1))
      worst = { taken, allowed, share: taken / allowed };
    else if (worst.share === null) worst = { ...worst, allowed: Math.min(worst.allowed, allowed) };
  }
  return { region, firstContact, full: isFull ? full : null, ...worst, coldest };
}

/** Time to coherency of still metal in a full cell [s]. */
function allowedTime(heat: Heat, mesh: Mesh, i: number, arriving: number): number {
  const contact = { transfer: heat.transfer[i]!, dieTemperature: heat.dieTemperature[i]! };
  const liquid = enthalpyOf(heat.freezing, arriving) > 0;
  return liquid
    ? timeToSolidFraction(
        heat.freezing,
        modulusAbout(heat, mesh, i),
        arriving,
        contact,
        heat.freezing.coherency,
      )
    : 0;
}
