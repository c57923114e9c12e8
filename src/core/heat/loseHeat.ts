import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { contactArea, type Turn } from './contactArea';
import { liquidEnthalpy, solidFractionOf, temperatureOf } from './enthalpy';
import type { Freezing } from './freezing';
import { CONTACT_DEPTH, FULL, type Heat } from './heat';

/**
 * Heat from metal to die in one step, implicit, cell by cell: ρ V (H' − H) = −K (T(H') − T_die) with
 * K = dt h A, or less when the die's surface warms with it. Implicit, so metal never passes the die's temperature
 * however thin it is. Temperature and solid fraction are set; first contact and full are noted.
 */
export function loseHeat(heat: Heat, flow: Flow, mesh: Mesh, turn: Turn, dt: number, time: number): void {
  const { freezing, enthalpy, temperature, solid, dieTemperature, dieHeat, lostByRegion, region } = heat;
  for (let i = 0; i < mesh.cells; i++) {
    const volume = flow.volume[i]!;
    if (volume <= 0) {
      enthalpy[i] = 0;
      temperature[i] = solid[i] = Number.NaN;
      continue;
    }
    note(heat, mesh, i, volume, time);
    const area = contactArea(
      heat.walls,
      mesh,
      i,
      volume,
      flow.level[i]!,
      turn,
      wettedShare(heat, flow, mesh, i),
    );
    const direct = dt * transferNow(heat, i, time) * area;
    const capacity = dieHeat[i]!;
    const coupled = direct / (1 + direct / capacity);
    const mass = freezing.density * volume;
    const before = enthalpy[i]!;
    const after = implicitEnthalpy(freezing, before, coupled / mass, dieTemperature[i]!);
    const given = mass * (before - after);
    enthalpy[i] = after;
    temperature[i] = temperatureOf(freezing, after);
    solid[i] = solidFractionOf(freezing, after);
    dieTemperature[i] = dieTemperature[i]! + given / capacity;
    const k = region[i]!;
    lostByRegion[k] = lostByRegion[k]! + given;
    heat.lost += given;
  }
}

/** Solves H' + κ (T(H') − T_die) = H; both sides rise with H', so the piece of T(H) it falls in is known beforehand. */
export function implicitEnthalpy(freezing: Freezing, enthalpy: number, kappa: number, die: number): number {
  const { solidus, liquidus, solidHeat, liquidHeat } = freezing;
  const liquid = liquidEnthalpy(freezing);
  if (enthalpy >= liquid + kappa * (liquidus - die)) {
    const pull = kappa / liquidHeat;
    return (enthalpy + pull * liquid - kappa * (liquidus - die)) / (1 + pull);
  }
  if (enthalpy >= kappa * (solidus - die)) {
    const pull = (kappa * (liquidus - solidus)) / liquid;
    return (enthalpy - kappa * (solidus - die)) / (1 + pull);
  }
  return (enthalpy - kappa * (solidus - die)) / (1 + kappa / solidHeat);
}

function transferNow(heat: Heat, i: number, time: number): number {
  const contact = time - heat.firstContact[i]!;
  return contact >= heat.laterAfter[i]! ? heat.laterTransfer[i]! : heat.transfer[i]!;
}

function note(heat: Heat, mesh: Mesh, i: number, volume: number, time: number): void {
  const depth = volume / (mesh.width[i]! * (mesh.x[i + 1]! - mesh.x[i]!));
  if (depth >= CONTACT_DEPTH && !(heat.firstContact[i]! <= time)) heat.firstContact[i] = time;
  if (volume >= FULL * mesh.volume[i]! && !(heat.fullTime[i]! <= time)) heat.fullTime[i] = time;
}

/**
 * In the cell of a front metal stands blunt over part of the cell; that part is the share its depth has of its
 * neighbour's, as the front itself is read. Elsewhere 1.
 */
function wettedShare(heat: Heat, flow: Flow, mesh: Mesh, i: number): number {
  const before = i > 0 ? depthOf(flow, mesh, i - 1) : 0;
  const here = depthOf(flow, mesh, i);
  const after = i < heat.enthalpy.length - 1 ? depthOf(flow, mesh, i + 1) : 0;
  const deeper = before > after ? before : after;
  const shallower = before > after ? after : before;
  if (shallower >= FILM_DEPTH || here >= deeper) return 1;
  return here / deeper;
}

/** Thinner than this a neighbour is no metal for the front [m]. */
const FILM_DEPTH = 2e-5;

function depthOf(flow: Flow, mesh: Mesh, i: number): number {
  return flow.volume[i]! / (mesh.width[i]! * (mesh.x[i + 1]! - mesh.x[i]!));
}
