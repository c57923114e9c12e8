import { GRAVITY } from '$src/core/gravity';
import { rootBetween } from '$src/verify/measure';

/** Depth and speed of a known flow at a place. */
export interface State {
  readonly depth: number;
  readonly speed: number;
}

/**
 * Dam break on a dry level floor (Ritter 1892): the dam at `dam` holds depth `h0` on its left and goes at t = 0.
 * `gravity` is the part normal to the floor.
 */
export function ritter(x: number, t: number, dam: number, h0: number, gravity = GRAVITY): State {
  const c0 = Math.sqrt(gravity * h0);
  const s = (x - dam) / t;
  if (s <= -c0) return { depth: h0, speed: 0 };
  if (s >= 2 * c0) return { depth: 0, speed: 0 };
  return { depth: (2 * c0 - s) ** 2 / (9 * gravity), speed: (2 / 3) * (c0 + s) };
}

/** Where the Ritter fan is `share` of h0 deep, from the dam [m]. */
export const ritterPlace = (share: number, t: number, h0: number): number =>
  t * Math.sqrt(GRAVITY * h0) * (2 - 3 * Math.sqrt(share));

/** Depth, speed and bore speed between the fan and the bore of a dam break on wet floor. */
export interface Middle {
  readonly depth: number;
  readonly speed: number;
  readonly bore: number;
}

/** Middle state of a dam break on a wet level floor (Stoker 1957), depths hl > hr > 0. */
export function stokerMiddle(hl: number, hr: number): Middle {
  const fan = (h: number) => 2 * (Math.sqrt(GRAVITY * hl) - Math.sqrt(GRAVITY * h));
  const jump = (h: number) => (h - hr) * Math.sqrt((GRAVITY / 2) * (1 / h + 1 / hr));
  const depth = rootBetween(hr, hl, (h) => jump(h) - fan(h));
  const speed = fan(depth);
  return { depth, speed, bore: (depth * speed) / (depth - hr) };
}

export function stoker(x: number, t: number, dam: number, hl: number, hr: number): State {
  const { depth, speed, bore } = stokerMiddle(hl, hr);
  const s = (x - dam) / t;
  if (s >= bore) return { depth: hr, speed: 0 };
  if (s >= speed - Math.sqrt(GRAVITY * depth)) return { depth, speed };
  const fan = ritter(x, t, dam, hl);
  return fan;
}

const ROOT3 = Math.sqrt(3);

/** First-order friction correction of the Ritter fan, Chezy coefficient c (Dressler 1952). Trusted up to xi = 0. */
export function dressler(x: number, t: number, dam: number, h0: number, c: number): State {
  const c0 = Math.sqrt(GRAVITY * h0);
  const xi = (x - dam) / (c0 * t);
  if (xi <= -1) return { depth: h0, speed: 0 };
  const rest = 2 - xi;
  const a1 = 6 / (5 * rest) - 2 / 3 + ((4 * ROOT3) / 135) * rest ** 1.5;
  const a2 = 12 / rest - 8 / 3 + ((8 * ROOT3) / 189) * rest ** 1.5 - 108 / (7 * rest * rest);
  const friction = (GRAVITY * GRAVITY * t) / (c * c);
  const s = (x - dam) / t;
  return {
    depth: ((2 * c0) / 3 - s / 3 + friction * a1) ** 2 / GRAVITY,
    speed: (2 * c0) / 3 + (2 * s) / 3 + friction * a2,
  };
}

/**
 * Dam break of a uniform layer on a dry plane falling at angle `theta`: Ritter in a frame that slides down with
 * g sin θ, gravity g cos θ. Mangeney, Heinrich & Roche 2000 (from memory); the frame argument is ours.
 */
export function slopeDamBreak(s: number, t: number, dam: number, h0: number, theta: number): State {
  const slid = (GRAVITY * Math.sin(theta) * t * t) / 2;
  const inFrame = ritter(s - slid, t, dam, h0, GRAVITY * Math.cos(theta));
  return {
    depth: inFrame.depth,
    speed: inFrame.depth > 0 ? inFrame.speed + GRAVITY * Math.sin(theta) * t : 0,
  };
}
