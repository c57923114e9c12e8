import type { Forces } from './forces';
import { DRY_DEPTH, NOSE_WEIGHT, SKIN_DEPTH } from './settings';

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

const BLEND_FROM = 0.9;
const BLEND_TO = 1.1;

/**
 * @param towards speed towards the dry side before pressure [m/s]
 * @param headOverSill level of the wet cell above the sill [m] (lab elevation)
 * @param drop level of the wet cell above the dry cell's lowest point [m]
 * @param height metal height at the face, square to the floor [m]
 * @param opening free height at the face, lab-vertical [m]
 */
export function gateAtFront(
  result: GateResult,
  towards: number,
  headOverSill: number,
  drop: number,
  height: number,
  opening: number,
  path: number,
  dt: number,
  { gravity, cos, openFront, slotFront }: Pick<Forces, 'gravity' | 'cos' | 'openFront' | 'slotFront'>,
): void {
  const fullness = headOverSill / opening;
  const blend = smooth((fullness - BLEND_FROM) / (BLEND_TO - BLEND_FROM));
  const open = openFront / (0.5 * height);
  const slot = slotFront / height + (gravity * opening) / 2;
  const standing = Math.max(0, Math.min(headOverSill, height * Math.max(cos, 0.05)));
  const head = standing + Math.max(0, headOverSill - opening);
  result.loss = (dt * (open + (slot - open) * blend)) / path;
  result.open = towards + (dt * gravity * Math.max(head, drop)) / path > result.loss;
}

function smooth(t: number): number {
  if (t <= 0) return 0;
  if (t >= 1) return 1;
  return t * t * (3 - 2 * t);
}

/** Which side of a face holds the nose of a front, a wet cell with a dry one beyond: 1 right, −1 left, 0 neither. */
export function noseSide(depth: Float64Array, l: number, r: number, cells: number): 1 | 0 | -1 {
  if (r + 1 < cells && depth[r + 1]! <= SKIN_DEPTH && depth[r]! > DRY_DEPTH) return 1;
  if (l > 0 && depth[l - 1]! <= SKIN_DEPTH && depth[l]! > DRY_DEPTH) return -1;
  return 0;
}

/**
 * Share of the skin's force that acts behind a nose cell which holds `filled` of its neighbour's depth. Once the
 * cell is as deep as the metal behind it, the gate ahead of it carries the whole force and nothing is left here.
 */
export function noseShare(filled: number): number {
  return filled < 1 ? NOSE_WEIGHT * (1 - filled) : 0;
}
