import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { contactArea, type Turn } from './contactArea';
import { liquidEnthalpy } from './enthalpy';
import type { Freezing } from './freezing';
import { CONTACT_DEPTH, FULL, type Heat } from './heat';

/**
 * Heat from metal to die over a stretch of time, implicit, cell by cell: ρ V (H' − H) = −K (T(H') − T_die) with
 * K = dt h A, or less when the die's surface warms with it. Implicit, so metal never passes the die's temperature
 * however thin it is. Temperature and solid fraction are set; first contact and full are noted.
 */
export function loseHeat(heat: Heat, flow: Flow, mesh: Mesh, turn: Turn, dt: number, time: number): void {
  const { freezing, enthalpy, temperature, solid, dieTemperature, dieHeat } = heat;
  const walls = mesh.upsideDown ? heat.wallsTurned : heat.walls;
  const { solidus, liquidus, liquidHeat, solidHeat, density } = freezing;
  const { volume, level, gas } = flow;
  const liquid = liquidEnthalpy(freezing);
  const range = liquidus - solidus;
  heat.hasSolid = false;
  for (let i = 0; i < mesh.cells; i++) {
    const held = volume[i]!;
    if (held <= 0) {
      enthalpy[i] = 0;
      temperature[i] = solid[i] = Number.NaN;
      continue;
    }
    note(heat, mesh, i, held, time);
    // A level under sealed gas is raised by the gas's head; the metal's surface stands lower.
    const surface = gas ? level[i]! - gas.head[i]! : level[i]!;
    const area = contactArea(walls, mesh, i, held, surface, turn, wettedShare(flow, mesh, i));
    const mass = density * held;
    const die = dieTemperature[i]!;
    const direct = dt * transferNow(heat, i, time) * area;
    const kappa = (heat.dieWarms ? direct / (1 + direct / dieHeat[i]!) : direct) / mass;
    const before = enthalpy[i]!;
    const after = implicitEnthalpy(freezing, liquid, before, kappa, die);
    enthalpy[i] = after;
    if (after >= liquid) {
      temperature[i] = liquidus + (after - liquid) / liquidHeat;
      solid[i] = 0;
    } else {
      heat.hasSolid = true;
      const share = after > 0 ? after / liquid : 0;
      temperature[i] = after > 0 ? solidus + share * range : solidus + after / solidHeat;
      solid[i] = 1 - share;
    }
    giveToDie(heat, i, mass * (before - after));
  }
}

function giveToDie(heat: Heat, i: number, given: number): void {
  const { dieTemperature, dieHeat, lostByRegion, region } = heat;
  if (heat.dieWarms) dieTemperature[i] = dieTemperature[i]! + given / dieHeat[i]!;
  const k = region[i]!;
  lostByRegion[k] = lostByRegion[k]! + given;
  heat.lost += given;
}

/** Solves H' + κ (T(H') − T_die) = H; both sides rise with H', so the piece of T(H) it falls in is known beforehand. `liquid` is H at the liquidus. */
export function implicitEnthalpy(
  freezing: Freezing,
  liquid: number,
  enthalpy: number,
  kappa: number,
  die: number,
): number {
  const { solidus, liquidus, solidHeat, liquidHeat } = freezing;
  const atLiquidus = kappa * (liquidus - die);
  if (enthalpy >= liquid + atLiquidus) {
    return liquid + ((enthalpy - liquid - atLiquidus) * liquidHeat) / (liquidHeat + kappa);
  }
  const atSolidus = kappa * (solidus - die);
  if (enthalpy >= atSolidus) {
    return ((enthalpy - atSolidus) * liquid) / (liquid + kappa * (liquidus - solidus));
  }
  return ((enthalpy - atSolidus) * solidHeat) / (solidHeat + kappa);
}

function transferNow(heat: Heat, i: number, time: number): number {
  const contact = time - heat.firstContact[i]!;
  return contact >= heat.laterAfter[i]! ? heat.laterTransfer[i]! : heat.transfer[i]!;
}

/** Both marks are NaN until set, so a comparison with them is false. */
function note(heat: Heat, mesh: Mesh, i: number, volume: number, time: number): void {
  const { firstContact, fullTime } = heat;
  if (!(firstContact[i]! <= time) && volume >= CONTACT_DEPTH * mesh.width[i]! * (mesh.x[i + 1]! - mesh.x[i]!))
    firstContact[i] = time;
  if (!(fullTime[i]! <= time) && volume >= FULL * mesh.volume[i]!) fullTime[i] = time;
}

/** Thinner than this a neighbour is no metal for the front [m]. */
const FILM_DEPTH = 2e-5;

/**
 * In the cell of a front metal stands blunt over part of the cell; that part is the share its depth has of its
 * neighbour's, as the front itself is read, or of the cell's own height where that is lower. Elsewhere 1. Depths
 * are the flow's, of the beginning of its step.
 */
function wettedShare(flow: Flow, mesh: Mesh, i: number): number {
  const { depth } = flow;
  const before = i > 0 ? depth[i - 1]! : 0;
  const after = i < mesh.cells - 1 ? depth[i + 1]! : 0;
  const shallower = before > after ? after : before;
  if (shallower >= FILM_DEPTH) return 1;
  const deeper = before > after ? before : after;
  const here = depth[i]!;
  if (here >= deeper) return 1;
  const ofNeighbour = here / deeper;
  const ofCell = flow.volume[i]! / mesh.volume[i]!;
  return ofNeighbour > ofCell ? ofNeighbour : ofCell;
}
