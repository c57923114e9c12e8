import type { FoldSize } from '$src/core/pour/record';

/** A fold's pin. */
export interface PinMark {
  readonly number: number;
  readonly size: FoldSize;
  /** From the mouth along the axis [m]. */
  readonly place: number;
  /** What it is, for the title of the pin, e.g. "end impact, marked, 1.21 s". */
  readonly name: string;
}

/** The front: where it is, and what is written there, place first. */
export interface FrontMark {
  /** From the mouth along the axis [m]; negative in the basin. */
  readonly place: number;
  /** e.g. ["front 196 mm", "0.81 m/s · 8 mm deep"]; the first is bold. */
  readonly lines: readonly string[];
}
