import type { Forces } from './forces';
import { DRY_DEPTH, SKIN_DEPTH } from './settings';

/**
 * The capillary gate at the face ahead of a front. Metal with an oxide skin advances only when pressure and
 * momentum beat the line force of the skin; the force resists advance and never pulls back.
 *
 * An open front of height h resists with σ_open = γ (1 − cos θ)/ρ. One that stands between floor and roof a
 * distance H apart resists with σ_slot = 2 γ |cos θ|/ρ and is driven by the mean head over H, so it needs the
 * slot head 2 γ |cos θ|/(ρ g H) (C04 for the open case; textbook capillary slot for the other). Between
 * 0.9 and 1.1 of contact with the roof the two pass smoothly into each other.
 *
 * The pull across the face is that of the whole level above the sill. An open front of depth h is pushed by half
 * of it, which its half-filled cell makes up for; a full one by all but the half height, which is taken off here.
 */
export interface GateResult {
  open: boolean;
  /** Speed taken from the front in the step [m/s]. */
  loss: number;
}

/** Share of a nose cell over which the gate ahead takes over from the force behind it. */
const GATE_TAKES_OVER = 0.1;
const BLEND_FROM = 0.9;
/** From this head over the opening's height on a front is one of a slot. */
export const BLEND_TO = 1.1;

/** 0 for an open front, 1 for one that stands between floor and roof. */
export function slotBlend(headOverSill: number, opening: number): number {
  return smooth((headOverSill / opening - BLEND_FROM) / (BLEND_TO - BLEND_FROM));
}

/**
 * @param towards speed towards the dry side before pressure [m/s]
 * @param following the same of the metal behind, which a full slot carries through the face [m/s]
 * @param headOverSill level of the wet cell above the sill [m] (lab elevation)
 * @param drop level of the wet cell above the dry cell's lowest point [m]
 * @param height metal height at the face, square to the floor [m]
 * @param opening free height at the face, lab-vertical [m]
 */
export function gateAtFront(
  result: GateResult,
  towards: number,
  following: number,
  headOverSill: number,
  drop: number,
  height: number,
  opening: number,
  path: number,
  dt: number,
  forces: Pick<Forces, 'gravity' | 'cos' | 'openFront' | 'slotFront'>,
): void {
  const { gravity, cos, openFront } = forces;
  const blend = slotBlend(headOverSill, opening);
  const open = openFront / (0.5 * height);
  const standing = Math.max(0, Math.min(headOverSill, height * Math.max(cos, 0.05)));
  const head = standing + Math.max(0, headOverSill - opening);
  const openLoss = (dt * open) / path;
  result.loss = openLoss + (slotLoss(height, opening, path, dt, forces) - openLoss) * blend;
  const carried = towards + blend * Math.max(0, following - towards);
  result.open = carried + (dt * gravity * Math.max(head, drop)) / path > result.loss;
}

function smooth(t: number): number {
  if (t <= 0) return 0;
  if (t >= 1) return 1;
  return t * t * (3 - 2 * t);
}

/** Speed that the skin of a front between floor and roof takes in the step [m/s]. */
export function slotLoss(
  height: number,
  opening: number,
  path: number,
  dt: number,
  { gravity, slotFront }: Pick<Forces, 'gravity' | 'slotFront'>,
): number {
  return (dt * (slotFront / height + (gravity * opening) / 2)) / path;
}

/** Which side of a face holds the nose of a front, a wet cell with a dry one beyond: 1 right, −1 left, 0 neither. */
export function noseSide(depth: Float64Array, l: number, r: number, cells: number): 1 | 0 | -1 {
  if (r + 1 < cells && depth[r + 1]! <= SKIN_DEPTH && depth[r]! > DRY_DEPTH) return 1;
  if (l > 0 && depth[l - 1]! <= SKIN_DEPTH && depth[l]! > DRY_DEPTH) return -1;
  return 0;
}

/**
 * What the skin takes from the metal behind a nose cell [m²/s² per metre of floor, so m/s²]. The skin of an open front bears
 * its whole force wherever in the cell the front is. Of that the held face ahead carries what already presses on it, as a
 * wall does; the rest acts here. At its stand a front is then in balance wherever it is, and at the face ahead the gate
 * takes over without a jump. In a slot the front stands from floor to roof wherever in the cell it is, so the whole force
 * acts until the cell is all but full and the gate ahead takes over.
 *
 * @param pressed what presses on the face ahead, over density [m³/s²]
 * @param filled share of its neighbour's depth that the nose cell holds
 * @param height mean height of the metal about the face, square to the floor [m]
 * @param free height between floor and roof at the face, square to the floor [m]
 */
export function noseForce(
  pressed: number,
  filled: number,
  blend: number,
  height: number,
  free: number,
  { openFront, slotFront }: Pick<Forces, 'openFront' | 'slotFront'>,
): number {
  const open = Math.max(0, openFront - pressed) / height;
  const slot = (Math.min(1, Math.max(0, 1 - filled) / GATE_TAKES_OVER) * slotFront) / free;
  return open + (slot - open) * blend;
}
