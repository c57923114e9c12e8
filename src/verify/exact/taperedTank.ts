import { GRAVITY } from '$src/core/gravity';
import { rootBetween } from '$src/verify/measure';

/** A standing wave of a tank whose width changes evenly along it. */
export interface StandingWave {
  /** [s] */
  readonly period: number;
  /** Height of the wave at x over that at the start of the tank. */
  shape(x: number): number;
}

/** Pieces of the tank for the march along it; the fourth-order error is then far below any bar. */
const PIECES = 400;

/**
 * The nth standing wave of a tank as wide at its end as `taper` times its start: (B η′)′ + k² B η = 0 with η′ = 0 at both
 * walls, k found so that a march from the one meets the other. Its solutions are Bessel functions of order nought
 * (Lamb, canal of variable breadth, from memory).
 */
export function standingWave(length: number, depth: number, taper: number, mode: number): StandingWave {
  const guess = (mode * Math.PI) / length;
  const slopeAtEnd = (tried: number) => march(length, taper, tried).slope;
  const k = rootBetween(0.8 * guess, 1.25 * guess, slopeAtEnd);
  const { heights } = march(length, taper, k);
  return {
    period: (2 * Math.PI) / (k * Math.sqrt(GRAVITY * depth)),
    shape: (x) => {
      const place = Math.min(PIECES - 1, Math.max(0, Math.floor((x / length) * PIECES)));
      const part = (x / length) * PIECES - place;
      return heights[place]! * (1 - part) + heights[place + 1]! * part;
    },
  };
}

/** Heights from wall to wall and the slope at the far one, by the classical Runge–Kutta method. */
function march(length: number, taper: number, k: number): { heights: number[]; slope: number } {
  const step = length / PIECES;
  const gain = (taper - 1) / length;
  const bend = (x: number, height: number, slope: number) =>
    -k * k * height - (gain / (1 + gain * x)) * slope;
  const heights = [1];
  let [height, slope] = [1, 0];
  for (let i = 0; i < PIECES; i++) {
    const x = i * step;
    const half = step / 2;
    const b1 = bend(x, height, slope);
    const s2 = slope + half * b1;
    const b2 = bend(x + half, height + half * slope, s2);
    const s3 = slope + half * b2;
    const b3 = bend(x + half, height + half * s2, s3);
    const s4 = slope + step * b3;
    const b4 = bend(x + step, height + step * s3, s4);
    height += (step / 6) * (slope + 2 * s2 + 2 * s3 + s4);
    slope += (step / 6) * (b1 + 2 * b2 + 2 * b3 + b4);
    heights.push(height);
  }
  return { heights, slope };
}
