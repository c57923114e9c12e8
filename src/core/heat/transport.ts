import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import type { Heat } from './heat';
import { sharpen } from './sharpen';

/**
 * Carries the heat content with the metal: upwind, with the very discharges of the flow's last step, so what leaves a
 * cell enters its neighbour. A cell that gives away more than it held before the step (metal passing through) gives
 * the surplus at its new heat content; with that share implicit no cell becomes hotter or colder than what it is
 * made of, whatever the step. What upwind mixes besides is given back where that is safe (`sharpen.ts`).
 *
 * Row of cell i, w = metal kept from before, in = metal that came, q = share given implicitly:
 * (w + in) H_i − Σ in q H_donor = w H_i° + Σ in (1 − q) H_donor°.
 */
export function carry(heat: Heat, flow: Flow, mesh: Mesh, dt: number): void {
  const last = mesh.cells - 1;
  setShares(heat, flow, dt);
  setRows(heat, flow, mesh.cells, dt);
  const firstBefore = heat.enthalpy[0]!;
  const lastBefore = heat.enthalpy[last]!;
  for (let i = flow.activeFrom; i <= flow.activeTo; i++) heat.moving[i] = heat.enthalpy[i]!;
  solveRows(heat, flow);
  const ends =
    flow.flux[0]! * endHeat(heat, 0, firstBefore, flow.flux[0]! > 0) -
    flow.flux[last + 1]! * endHeat(heat, last, lastBefore, flow.flux[last + 1]! < 0);
  heat.brought += heat.freezing.density * dt * ends;
  sharpen(heat, flow, dt);
}

/** Heat content of what passes an open end of the section beside cell i [J/kg]; a die's ends are closed. */
function endHeat(heat: Heat, i: number, before: number, enters: boolean): number {
  const share = heat.implicit[i]!;
  return enters ? heat.entering : (1 - share) * before + share * heat.enthalpy[i]!;
}

/** Share of what a cell gives away that it did not hold before the step. */
function setShares(heat: Heat, flow: Flow, dt: number): void {
  const { implicit, volumeBefore } = heat;
  const { flux, activeFrom, activeTo } = flow;
  for (let i = activeFrom; i <= activeTo; i++) {
    const given = dt * (Math.max(0, flux[i + 1]!) + Math.max(0, -flux[i]!));
    const held = Math.max(0, volumeBefore[i]!);
    implicit[i] = given > held ? 1 - held / given : 0;
  }
}

function setRows(heat: Heat, flow: Flow, cells: number, dt: number): void {
  const { enthalpy, implicit, volumeBefore, lower, upper, diagonal, right, entering } = heat;
  const { flux, activeFrom, activeTo } = flow;
  for (let i = activeFrom; i <= activeTo; i++) {
    const fromLeft = dt * Math.max(0, flux[i]!);
    const fromRight = dt * Math.max(0, -flux[i + 1]!);
    const given = dt * (Math.max(0, flux[i + 1]!) + Math.max(0, -flux[i]!));
    const kept = Math.max(0, volumeBefore[i]! - given * (1 - implicit[i]!));
    const leftShare = i > 0 ? implicit[i - 1]! : 0;
    const rightShare = i < cells - 1 ? implicit[i + 1]! : 0;
    const leftHeat = i > 0 ? enthalpy[i - 1]! : entering;
    const rightHeat = i < cells - 1 ? enthalpy[i + 1]! : entering;
    lower[i] = -fromLeft * leftShare;
    upper[i] = -fromRight * rightShare;
    diagonal[i] = kept + fromLeft + fromRight;
    right[i] =
      kept * enthalpy[i]! + fromLeft * (1 - leftShare) * leftHeat + fromRight * (1 - rightShare) * rightHeat;
  }
}

/** Thomas algorithm; a cell that neither kept nor got metal has no heat content. The solution lands in `enthalpy`. */
function solveRows(heat: Heat, { activeFrom: first, activeTo: last }: Flow): void {
  const { lower, upper, diagonal, right, enthalpy } = heat;
  for (let i = first + 1; i <= last; i++) {
    if (lower[i]! !== 0 && diagonal[i - 1]! > 0) {
      const ratio = lower[i]! / diagonal[i - 1]!;
      diagonal[i] = diagonal[i]! - ratio * upper[i - 1]!;
      right[i] = right[i]! - ratio * right[i - 1]!;
    }
  }
  for (let i = last; i >= first; i--) {
    const after = i < last && upper[i]! !== 0 ? upper[i]! * enthalpy[i + 1]! : 0;
    enthalpy[i] = diagonal[i]! > 0 ? (right[i]! - after) / diagonal[i]! : 0;
  }
}
