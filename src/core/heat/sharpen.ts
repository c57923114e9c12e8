import type { Flow } from '$src/core/flow/flow';
import type { Heat } from './heat';

/**
 * Gives back the heat that the upwind carrying has mixed from cell to cell, second order where the heat content runs
 * smoothly: of what upwind mixes at a face, ½|q| dt (1 − c) ΔH with c the share of its metal that the giving cell gave,
 * as much as the lesser of the two slopes about the giving cell (minmod) explains. What one cell gets its neighbour loses,
 * and no cell comes out hotter or colder than it and its neighbours were before the step or after the mixing.
 * Source: flux-corrected transport, Zalesak, J. Comput. Phys. 31 (1979) 335 (from memory).
 *
 * Reads the heat contents from before the step in `moving`; leaves the scratch of the rows overwritten.
 */
export function sharpen(heat: Heat, flow: Flow, dt: number): void {
  setVolumesAfter(heat, flow, dt);
  if (!setGains(heat, flow, dt)) return;
  setRoom(heat, flow);
  giveBack(heat, flow);
}

/** Volume of every cell after the discharges [m³], in `diagonal`. */
function setVolumesAfter(
  { diagonal, volumeBefore }: Heat,
  { flux, activeFrom, activeTo }: Flow,
  dt: number,
): void {
  for (let i = activeFrom; i <= activeTo; i++)
    diagonal[i] = volumeBefore[i]! + dt * (flux[i]! - flux[i + 1]!);
}

/** What cell i is to get over its left face, and the cell before it to lose, in `lower`; false when there is nothing. */
function setGains(heat: Heat, flow: Flow, dt: number): boolean {
  const { lower } = heat;
  const { flux, activeFrom, activeTo } = flow;
  let isAny = false;
  lower[activeFrom] = 0;
  for (let i = activeFrom + 1; i <= activeTo; i++) {
    const passed = dt * flux[i]!;
    const gain =
      passed > 0 ? mixedBack(heat, flow, i - 1, 1, passed) : -mixedBack(heat, flow, i, -1, -passed);
    lower[i] = gain;
    if (gain !== 0) isAny = true;
  }
  return isAny;
}

/** What the cell that takes a volume [m³] from cell `from` on one side is to get back. */
function mixedBack(
  heat: Heat,
  { activeFrom, activeTo }: Flow,
  from: number,
  side: 1 | -1,
  passed: number,
): number {
  const { enthalpy, diagonal, implicit, volumeBefore } = heat;
  const behind = from - side;
  // A cell that gave more than it held knows no slope of its own.
  if (passed === 0 || behind < activeFrom || behind > activeTo || implicit[from]! > 0) return 0;
  if (!(diagonal[from]! > 0 && diagonal[from + side]! > 0 && diagonal[behind]! > 0)) return 0;
  const ahead = enthalpy[from + side]! - enthalpy[from]!;
  const past = enthalpy[from]! - enthalpy[behind]!;
  if (ahead * past <= 0) return 0;
  const slope = Math.abs(past) < Math.abs(ahead) ? past : ahead;
  return 0.5 * passed * (1 - passed / volumeBefore[from]!) * slope;
}

/** Share of what each cell is to get that it has room for, in `upper`, and of what it is to lose, in `right`. */
function setRoom(heat: Heat, { activeFrom, activeTo }: Flow): void {
  const { lower, upper, right, diagonal, enthalpy } = heat;
  for (let i = activeFrom; i <= activeTo; i++) {
    const left = lower[i]!;
    const next = i < activeTo ? lower[i + 1]! : 0;
    const gained = (left > 0 ? left : 0) + (next < 0 ? -next : 0);
    const lost = (left < 0 ? -left : 0) + (next > 0 ? next : 0);
    if (gained === 0 && lost === 0) continue;
    let highest = enthalpy[i]!;
    let lowest = highest;
    const first = i > activeFrom ? i - 1 : i;
    const last = i < activeTo ? i + 1 : i;
    for (let k = first; k <= last; k++) {
      if (!(diagonal[k]! > 0)) continue;
      const now = enthalpy[k]!;
      if (now > highest) highest = now;
      if (now < lowest) lowest = now;
      if (!(heat.volumeBefore[k]! > 0)) continue;
      const before = heat.moving[k]!;
      if (before > highest) highest = before;
      if (before < lowest) lowest = before;
    }
    upper[i] = gained > 0 ? Math.min(1, ((highest - enthalpy[i]!) * diagonal[i]!) / gained) : 0;
    right[i] = lost > 0 ? Math.min(1, ((enthalpy[i]! - lowest) * diagonal[i]!) / lost) : 0;
  }
}

function giveBack({ lower, upper, right, diagonal, enthalpy }: Heat, { activeFrom, activeTo }: Flow): void {
  for (let i = activeFrom + 1; i <= activeTo; i++) {
    const gain = lower[i]!;
    if (gain === 0) continue;
    const share = gain > 0 ? Math.min(upper[i]!, right[i - 1]!) : Math.min(right[i]!, upper[i - 1]!);
    const given = share * gain;
    enthalpy[i] = enthalpy[i]! + given / diagonal[i]!;
    enthalpy[i - 1] = enthalpy[i - 1]! - given / diagonal[i - 1]!;
  }
}
