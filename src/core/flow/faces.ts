import type { Mesh } from '$src/core/mesh/mesh';
import { frictionRate } from './conditions';
import type { Flow } from './flow';
import type { Forces } from './forces';
import { type GateResult, gateAtFront, noseShare, noseSide } from './gate';
import { CENTRING_LIMIT, DRY_DEPTH, SKIN_DEPTH } from './settings';

const STILL = 1e-7;
const CLOSED = 1e-12;

/**
 * Everything the level solve needs at the faces: passage, friction, explicit push, implicit pull, limiters and
 * the capillary gate. Writes passage, hold, pull, pushed and coupling.
 */
export function setFaces(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  const {
    level,
    depth,
    depthSlope,
    full,
    speed,
    area,
    areaBefore,
    advected,
    pushed,
    passage,
    sillLevel,
    hold,
    pull,
    coupling,
    volume,
  } = flow;
  const { cells, floorLeft, floorRight, floorCos, sill, ceiling, faceWidth, facePath, step } = mesh;
  const { gravity, cos, viscosity, drag } = forces;
  const { holds } = flow;
  const air = flow.gas ? flow.gas.head : null;
  const law = forces.conditions.friction;
  const metalFriction = law.kind === 'metal';
  const gated = forces.capillaryGate;
  const turns = forces.rate !== 0 || forces.acceleration !== 0;
  const normalGravity = gravity * Math.max(cos, 1e-3);
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(cells - 1, flow.activeTo + 1);
  for (let j = first; j <= last; j++) {
    const l = j - 1;
    const r = j;
    passage[j] = coupling[j] = pushed[j] = 0;
    if (volume[l]! <= 0 && volume[r]! <= 0) continue;
    const rise = level[r]! - level[l]!;
    const u = advected[j]!;
    let right = Math.abs(u) < STILL ? rise < 0 : u > 0;
    if (right) {
      if (depth[l]! < DRY_DEPTH && depth[r]! >= DRY_DEPTH && rise > 0) right = false;
    } else if (depth[r]! < DRY_DEPTH && depth[l]! >= DRY_DEPTH && rise < 0) right = true;
    const up = right ? l : r;
    const down = right ? r : l;
    const free = ceiling[j]! - sill[j]!;
    const transported = right
      ? depth[l]! + depthSlope[l]! / 2 + floorRight[l]! - sill[j]!
      : depth[r]! - depthSlope[r]! / 2 + floorLeft[r]! - sill[j]!;
    let height = transported < 0 ? 0 : transported > free ? free : transported;
    if (height < CLOSED) continue;
    const slant = floorCos[up]!;
    height *= slant;
    const spacing = facePath[j]!;
    const bothFull = full[l]! === 1 && full[r]! === 1;
    const weight = full[l] || full[r] ? 1 : forces.timeWeight;
    const centring =
      area[j]! > 0
        ? clamp(1 + (weight * (area[j]! - areaBefore[j]!)) / area[j]!, 1 / CENTRING_LIMIT, CENTRING_LIMIT)
        : 1;
    const friction = metalFriction
      ? ((bothFull ? 12 : 3) * viscosity) / (height * height) +
        ((bothFull ? 2 : 1) * drag * Math.abs(speed[j]!)) / height
      : frictionRate(law, gravity, height, speed[j]!);
    let factor = 1 / (1 + dt * friction);
    let push = u - (dt * gravity * (1 - weight) * centring * rise) / spacing;
    if (turns) push += dt * turningPush(flow, mesh, forces, j, up, bothFull);
    if (gated && !bothFull) {
      const loss = skinLoss(flow, mesh, forces, j, height, dt);
      if (loss === SHUT) continue;
      push -= loss;
    }
    const likely = Math.abs(u - (dt * gravity * rise) / spacing);
    if (step[j] && likely > 0) {
      const coming = right ? speed[j - 1]! : speed[j + 1]!;
      const energy = gravity * (level[up]! - sillLevel[j]! - (air ? air[down]! : 0)) + (coming * coming) / 2;
      if (energy <= 0) continue;
      const most = weirDischarge(energy, normalGravity, free);
      if (likely * height > most) {
        height = Math.min(height, (2 * energy) / (3 * normalGravity));
        factor *= Math.min(1, most / height / likely);
      }
    }
    if (depth[up]! < 0.5 * depth[down]! && rise < 0 === right && !bothFull) {
      const before = Math.max(Math.abs(speed[j - 1]!), Math.abs(speed[j + 1]!), Math.abs(u));
      const limit = Math.sqrt(before * before + 2 * gravity * Math.abs(rise)) + 1e-3;
      if (likely > limit) factor *= limit / likely;
    }
    if (holds) factor *= holds[j]!;
    passage[j] = height * faceWidth[j]!;
    hold[j] = factor;
    pull[j] = weight * centring * gravity;
    pushed[j] = push;
    coupling[j] = (dt * dt * pull[j]! * passage[j]! * factor) / spacing;
  }
}

/**
 * Push of the turning frame along the floor [m/s²]: centrifugal, Euler, and Coriolis with the pressure it makes,
 * which together come to 2Ω ∂h/∂t (derived in docs/model.md). Full passages have no surface to swell.
 */
function turningPush(
  flow: Flow,
  mesh: Mesh,
  forces: Forces,
  j: number,
  up: number,
  bothFull: boolean,
): number {
  const { depth, flux, advected } = flow;
  const { floorLeft, floorRight, floorCos, floorSin, path, width } = mesh;
  const { rate, acceleration } = forces;
  const l = j - 1;
  const armX = mesh.x[j]! - mesh.pivotX;
  const armY = (floorLeft[j]! + floorRight[l]!) / 2 - mesh.pivotY;
  const slope = bothFull ? 0 : (depth[j]! - depth[l]!) / mesh.facePath[j]!;
  const swelling =
    ((flux[l]! - flux[j]!) / (path[l]! * width[l]!) + (flux[j]! - flux[j + 1]!) / (path[j]! * width[j]!)) / 2;
  const reach = Math.abs(advected[j]!);
  const slant = floorCos[up]!;
  return (
    rate * rate * (armX * slant + armY * floorSin[up]!) +
    acceleration * (armY * slant - armX * (floorSin[up]! + clamp(slope, -1, 1))) +
    2 * rate * clamp(swelling, -reach, reach)
  );
}

const SHUT = Number.POSITIVE_INFINITY;
const gate: GateResult = { open: false, loss: 0 };

/** Speed that the skin of a front takes from the face in the step, with its sign [m/s]; SHUT when it holds the front. */
function skinLoss(flow: Flow, mesh: Mesh, forces: Forces, j: number, height: number, dt: number): number {
  const { depth, level, advected } = flow;
  const l = j - 1;
  const u = advected[j]!;
  const rise = level[j]! - level[l]!;
  const path = mesh.facePath[j]!;
  const wetLeft = depth[l]! > SKIN_DEPTH;
  if (wetLeft !== depth[j]! > SKIN_DEPTH) {
    const sign = wetLeft ? 1 : -1;
    const gas = flow.gas ? flow.gas.head[wetLeft ? j : l]! : 0;
    const head = (wetLeft ? level[l]! : level[j]!) - flow.sillLevel[j]! - gas;
    const opening = Math.max((mesh.ceiling[j]! - mesh.sill[j]!) * forces.cos, CLOSED);
    gateAtFront(gate, sign * u, head, -sign * rise, height, opening, path, dt, forces);
    return gate.open ? sign * gate.loss : SHUT;
  }
  const sign = noseSide(depth, l, j, mesh.cells);
  if (sign === 0) return 0;
  const towards = sign * (u - (dt * forces.gravity * rise) / path);
  if (towards <= 0) return 0;
  const share = noseShare(sign > 0 ? depth[j]! / depth[l]! : depth[l]! / depth[j]!);
  const loss = (dt * forces.openFront * share * mesh.faceWidth[j]!) / (flow.area[j]! * path);
  return towards <= loss ? SHUT : sign * loss;
}

/** Most that can pass a step for a given specific energy: critical flow, or an orifice when it fills the opening [m²/s]. */
function weirDischarge(energy: number, normalGravity: number, free: number): number {
  const critical = (2 * energy) / (3 * normalGravity);
  if (critical > free) return free * Math.sqrt(Math.max(0, 2 * (energy - normalGravity * free)));
  return ((2 * energy) / 3) ** 1.5 / normalGravity;
}

function clamp(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}
