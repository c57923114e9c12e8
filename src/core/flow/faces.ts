import type { Mesh } from '$src/core/mesh/mesh';
import { adjustFace } from './adjustFace';
import { frictionRate } from './conditions';
import type { Flow } from './flow';
import type { Forces } from './forces';
import { CENTRING_LIMIT, DRY_DEPTH, SKIN_DEPTH } from './settings';

const STILL = 1e-7;
const CLOSED = 1e-12;

/**
 * Everything the level solve needs at the faces: passage, friction, explicit push, implicit pull, limiters and
 * the capillary gate. Writes height, upstream, passage, hold, pull, pushed and coupling.
 *
 * The loops over all faces call nothing, which the engine rewards; the few faces where something special happens
 * (a front, a floor step, a plunge) are marked on the way and adjusted one by one at the end.
 */
export function setFaces(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  flow.heldCount = 0;
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(mesh.cells - 1, flow.activeTo + 1);
  const special = setPassages(flow, mesh, forces.capillaryGate, first, last);
  setPulls(flow, mesh, forces, dt, first, last);
  if (forces.rate !== 0 || forces.acceleration !== 0) turn(flow, mesh, forces, dt, first, last);
  if (forces.conditions.friction.kind !== 'metal') rubOtherwise(flow, forces, dt, first, last);
  for (let k = 0; k < special; k++) adjustFace(flow, mesh, forces, dt, flow.marked[k]!);
  if (flow.holds) stiffen(flow, flow.holds, first, last);
  couple(flow, mesh, dt, first, last);
}

/**
 * Which way metal passes each face and how high it stands there, carried along the floor from the cell it comes
 * from. Marks the faces that `adjustFace` is to look at.
 * @returns how many are marked
 */
function setPassages(flow: Flow, mesh: Mesh, gated: boolean, first: number, last: number): number {
  const { level, depth, depthSlope, advected, volume, height, upstream, passage, marked } = flow;
  const { floorCos, faceWidth, step } = mesh;
  const { free, leftOverSill, rightOverSill } = mesh.tables;
  let special = 0;
  for (let j = first; j <= last; j++) {
    const l = j - 1;
    passage[j] = 0;
    if (volume[l]! <= 0 && volume[j]! <= 0) continue;
    const rise = level[j]! - level[l]!;
    const onLeft = depth[l]!;
    const onRight = depth[j]!;
    const u = advected[j]!;
    let right = Math.abs(u) < STILL ? rise < 0 : u > 0;
    if (right) {
      if (onLeft < DRY_DEPTH && onRight >= DRY_DEPTH && rise > 0) right = false;
    } else if (onRight < DRY_DEPTH && onLeft >= DRY_DEPTH && rise < 0) right = true;
    const transported = right
      ? onLeft + depthSlope[l]! / 2 + leftOverSill[j]!
      : onRight - depthSlope[j]! / 2 + rightOverSill[j]!;
    const most = free[j]!;
    const straight = transported < 0 ? 0 : transported > most ? most : transported;
    if (straight < CLOSED) continue;
    const up = right ? l : j;
    const here = straight * floorCos[up]!;
    height[j] = here;
    upstream[j] = up;
    passage[j] = here * faceWidth[j]!;
    const plunges = rise < 0 === right && (right ? onLeft < 0.5 * onRight : onRight < 0.5 * onLeft);
    const nearFront =
      gated &&
      (onLeft <= SKIN_DEPTH ||
        onRight <= SKIN_DEPTH ||
        (j > 1 && depth[j - 2]! <= SKIN_DEPTH) ||
        (j < last && depth[j + 1]! <= SKIN_DEPTH));
    if (plunges || nearFront || step[j] === 1) marked[special++] = j;
  }
  return special;
}

/** Implicit pull, explicit push of the old levels, and friction as metal rubs: a film, or a slot when both cells are full. */
function setPulls(flow: Flow, mesh: Mesh, forces: Forces, dt: number, first: number, last: number): void {
  const { level, full, speed, area, areaBefore, advected, pushed, passage, height, hold, pull } = flow;
  const { perPath } = mesh.tables;
  const { gravity, viscosity, drag, timeWeight } = forces;
  for (let j = first; j <= last; j++) {
    if (passage[j] === 0) {
      pushed[j] = 0;
      continue;
    }
    const fullSides = full[j - 1]! + full[j]!;
    const weight = fullSides > 0 ? 1 : timeWeight;
    const here = area[j]!;
    let centring = here > 0 ? 1 + (weight * (here - areaBefore[j]!)) / here : 1;
    if (centring > CENTRING_LIMIT) centring = CENTRING_LIMIT;
    else if (centring < 1 / CENTRING_LIMIT) centring = 1 / CENTRING_LIMIT;
    const film = height[j]!;
    const slot = fullSides === 2;
    const rubbing = ((slot ? 12 : 3) * viscosity) / film + (slot ? 2 : 1) * drag * Math.abs(speed[j]!);
    hold[j] = film / (film + dt * rubbing);
    pull[j] = weight * centring * gravity;
    const rise = level[j]! - level[j - 1]!;
    pushed[j] = advected[j]! - dt * gravity * (1 - weight) * centring * rise * perPath[j]!;
  }
}

/**
 * Push of the turning frame along the floor: centrifugal, Euler, and Coriolis with the pressure it makes,
 * which together come to 2Ω ∂h/∂t (derived in docs/model.md). Full passages have no surface to swell.
 */
function turn(flow: Flow, mesh: Mesh, forces: Forces, dt: number, first: number, last: number): void {
  const { depth, flux, advected, full, pushed, passage, upstream } = flow;
  const { x, floorLeft, floorRight, floorCos, floorSin, pivotX, pivotY } = mesh;
  const { perPath, perFloorArea } = mesh.tables;
  const { rate, acceleration } = forces;
  for (let j = first; j <= last; j++) {
    if (passage[j] === 0) continue;
    const l = j - 1;
    const armX = x[j]! - pivotX;
    const armY = (floorLeft[j]! + floorRight[l]!) / 2 - pivotY;
    const up = upstream[j]!;
    const cos = floorCos[up]!;
    const sin = floorSin[up]!;
    const through = flux[j]!;
    let swelling =
      ((flux[l]! - through) * perFloorArea[l]! + (through - flux[j + 1]!) * perFloorArea[j]!) / 2;
    const reach = Math.abs(advected[j]!);
    if (swelling > reach) swelling = reach;
    else if (swelling < -reach) swelling = -reach;
    let slope = full[l]! + full[j]! === 2 ? 0 : (depth[j]! - depth[l]!) * perPath[j]!;
    if (slope > 1) slope = 1;
    else if (slope < -1) slope = -1;
    const push =
      rate * rate * (armX * cos + armY * sin) +
      acceleration * (armY * cos - armX * (sin + slope)) +
      2 * rate * swelling;
    pushed[j] = pushed[j]! + dt * push;
  }
}

/** The friction laws of known channel solutions in place of the metal's. */
function rubOtherwise(flow: Flow, forces: Forces, dt: number, first: number, last: number): void {
  const law = forces.conditions.friction;
  for (let j = first; j <= last; j++)
    if (flow.passage[j]! > 0)
      flow.hold[j] = 1 / (1 + dt * frictionRate(law, forces.gravity, flow.height[j]!, flow.speed[j]!));
}

/** Stiff metal holds back what passes. */
function stiffen({ hold }: Flow, holds: Float64Array, first: number, last: number): void {
  for (let j = first; j <= last; j++) hold[j] = hold[j]! * holds[j]!;
}

/** How much metal a difference of level moves across each face in the step [m²]. */
function couple(flow: Flow, mesh: Mesh, dt: number, first: number, last: number): void {
  const { coupling, pull, passage, hold } = flow;
  const { perPath } = mesh.tables;
  const square = dt * dt;
  for (let j = first; j <= last; j++)
    coupling[j] = passage[j] === 0 ? 0 : square * pull[j]! * passage[j]! * hold[j]! * perPath[j]!;
}
