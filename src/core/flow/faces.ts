import type { Mesh } from '$src/core/mesh/mesh';
import { adjustFace } from './adjustFace';
import { frictionRate } from './conditions';
import type { Flow } from './flow';
import type { Forces } from './forces';
import { CENTRING_LIMIT, CLOSED, DRY_DEPTH, NO_CELL, SKIN_DEPTH, STILL } from './settings';

/**
 * Everything the level solve needs at the faces: passage, friction, explicit push, implicit pull, limiters and
 * the capillary gate. Writes height, upstream, passage, hold, pull, pushed and coupling.
 *
 * The loops over all faces call nothing, which the engine rewards; the few faces where something special happens
 * (a front, a floor step, a plunge) are marked on the way and adjusted one by one at the end.
 */
export function setFaces(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  flow.heldCount = 0;
  const special = setPassages(flow, mesh, forces.capillaryGate);
  setPulls(flow, mesh, forces, dt);
  if (forces.rate !== 0 || forces.acceleration !== 0) turn(flow, mesh, forces, dt);
  if (forces.conditions.friction.kind !== 'metal') rubOtherwise(flow, mesh, forces, dt);
  for (let k = 0; k < special; k++) {
    const j = flow.marked[k]!;
    adjustFace(flow, mesh, forces, dt, j);
    coupleFace(flow, mesh, dt, j);
  }
  if (flow.holds) stiffen(flow, mesh, dt, flow.holds);
}

/**
 * Which way metal passes each face and how high it stands there, carried along the floor from the cell it comes
 * from. Marks the faces that `adjustFace` is to look at.
 * @returns how many are marked
 */
function setPassages(flow: Flow, mesh: Mesh, gated: boolean): number {
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(mesh.cells - 1, flow.activeTo + 1);
  const { level, depth, depthSlope, advected, height, upstream, passage, marked } = flow;
  const { floorCos, faceWidth, step } = mesh;
  const { free, leftOverSill, rightOverSill } = mesh.tables;
  let special = 0;
  // What lies about the face moves along with it: every cell is read once.
  let farLeft = NO_CELL;
  let onLeft = first > 1 ? depth[first - 2]! : NO_CELL;
  let onRight = depth[first - 1]!;
  let farRight = depth[first]!;
  let levelRight = level[first - 1]!;
  for (let j = first; j <= last; j++) {
    const l = j - 1;
    farLeft = onLeft;
    onLeft = onRight;
    onRight = farRight;
    farRight = j < last ? depth[j + 1]! : NO_CELL;
    const levelLeft = levelRight;
    levelRight = level[j]!;
    passage[j] = 0;
    if (onLeft <= 0 && onRight <= 0) continue;
    const rise = levelRight - levelLeft;
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
    const plunges = right ? rise < 0 && onLeft < 0.5 * onRight : !(rise < 0) && onRight < 0.5 * onLeft;
    const nearFront =
      gated &&
      (onLeft <= SKIN_DEPTH || onRight <= SKIN_DEPTH || farLeft <= SKIN_DEPTH || farRight <= SKIN_DEPTH);
    if (plunges || nearFront || step[j] === 1) marked[special++] = j;
  }
  return special;
}

/**
 * Implicit pull, explicit push of the old levels, and friction as metal rubs: a film, or a slot when both cells are full;
 * from these how much metal a difference of level moves across the face in the step, as `coupleFace` has it.
 */
function setPulls(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(mesh.cells - 1, flow.activeTo + 1);
  const { level, full, speed, area, areaBefore, advected, pushed, passage, height, hold, pull, coupling } =
    flow;
  const { perPath } = mesh.tables;
  const { gravity, viscosity, drag, timeWeight } = forces;
  const square = dt * dt;
  const falling = dt * gravity;
  let fullRight = full[first - 1]!;
  let levelRight = level[first - 1]!;
  for (let j = first; j <= last; j++) {
    const fullSides = fullRight + full[j]!;
    fullRight = full[j]!;
    const levelLeft = levelRight;
    levelRight = level[j]!;
    const passing = passage[j]!;
    if (passing === 0) {
      pushed[j] = coupling[j] = 0;
      continue;
    }
    const weight = fullSides > 0 ? 1 : timeWeight;
    const here = area[j]!;
    let centring = here > 0 ? 1 + (weight * (here - areaBefore[j]!)) / here : 1;
    if (centring > CENTRING_LIMIT) centring = CENTRING_LIMIT;
    else if (centring < 1 / CENTRING_LIMIT) centring = 1 / CENTRING_LIMIT;
    const film = height[j]!;
    const slot = fullSides === 2;
    const rubbing = ((slot ? 12 : 3) * viscosity) / film + (slot ? 2 : 1) * drag * Math.abs(speed[j]!);
    const held = film / (film + dt * rubbing);
    const pulled = weight * centring * gravity;
    hold[j] = held;
    pull[j] = pulled;
    coupling[j] = square * pulled * passing * held * perPath[j]!;
    const rise = levelRight - levelLeft;
    pushed[j] = advected[j]! - falling * (1 - weight) * centring * rise * perPath[j]!;
  }
}

/**
 * Push of the turning frame along the floor: centrifugal, Euler, and Coriolis with the pressure it makes,
 * which together come to 2Ω ∂h/∂t (derived in docs/model.md). Full passages have no surface to swell.
 */
function turn(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(mesh.cells - 1, flow.activeTo + 1);
  const { depth, flux, advected, full, pushed, passage, upstream } = flow;
  const { floorCos, floorSin } = mesh;
  const { perPath, perFloorArea, armX, armY, outwardFromLeft, outwardFromRight } = mesh.tables;
  const { rate, acceleration } = forces;
  const square = rate * rate;
  const twice = 2 * rate;
  let throughLeft = flux[first - 1]!;
  let through = flux[first]!;
  let perAreaRight = perFloorArea[first - 1]!;
  for (let j = first; j <= last; j++) {
    const throughRight = flux[j + 1]!;
    const perAreaLeft = perAreaRight;
    perAreaRight = perFloorArea[j]!;
    if (passage[j] !== 0) {
      let swelling = ((throughLeft - through) * perAreaLeft + (through - throughRight) * perAreaRight) / 2;
      const reach = Math.abs(advected[j]!);
      if (swelling > reach) swelling = reach;
      else if (swelling < -reach) swelling = -reach;
      const up = upstream[j]!;
      let push = square * (up === j ? outwardFromRight[j]! : outwardFromLeft[j]!);
      if (acceleration !== 0) {
        let slope = full[j - 1]! + full[j]! === 2 ? 0 : (depth[j]! - depth[j - 1]!) * perPath[j]!;
        if (slope > 1) slope = 1;
        else if (slope < -1) slope = -1;
        push += acceleration * (armY[j]! * floorCos[up]! - armX[j]! * (floorSin[up]! + slope));
      }
      pushed[j] = pushed[j]! + dt * (push + twice * swelling);
    }
    throughLeft = through;
    through = throughRight;
  }
}

/** The friction laws of known channel solutions in place of the metal's. */
function rubOtherwise(flow: Flow, mesh: Mesh, forces: Forces, dt: number): void {
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(mesh.cells - 1, flow.activeTo + 1);
  const law = forces.conditions.friction;
  for (let j = first; j <= last; j++) {
    if (flow.passage[j] === 0) continue;
    flow.hold[j] = 1 / (1 + dt * frictionRate(law, forces.gravity, flow.height[j]!, flow.speed[j]!));
    coupleFace(flow, mesh, dt, j);
  }
}

/** Stiff metal holds back what passes. */
function stiffen(flow: Flow, mesh: Mesh, dt: number, holds: Float64Array): void {
  const { hold } = flow;
  const first = Math.max(1, flow.activeFrom);
  const last = Math.min(mesh.cells - 1, flow.activeTo + 1);
  for (let j = first; j <= last; j++) {
    hold[j] = hold[j]! * holds[j]!;
    coupleFace(flow, mesh, dt, j);
  }
}

/** How much metal a difference of level moves across a face in the step [m²]. */
function coupleFace({ coupling, pull, passage, hold }: Flow, mesh: Mesh, dt: number, j: number): void {
  const passing = passage[j]!;
  coupling[j] = passing === 0 ? 0 : dt * dt * pull[j]! * passing * hold[j]! * mesh.tables.perPath[j]!;
}
