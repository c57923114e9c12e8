import type { Point } from '$src/core/section/section';

/** A photo or scan laid under the outline of a section, set to scale by two marks and the length between them. */
export interface Underlay {
  /** The picture as a data address, JPEG or PNG. */
  readonly image: string;
  /** Size of the picture [px]. */
  readonly width: number;
  readonly height: number;
  /** Two places on the picture [px], y down from its top left corner. */
  readonly marks: readonly [Point, Point];
  /** True length between the marks [m]. */
  readonly length: number;
  /** Where the first mark lies in the die frame [m]. */
  readonly at: Point;
  /** Direction from the first mark to the second, against the die axis [rad]. */
  readonly direction: number;
  /** 0 (unseen) to 1. */
  readonly opacity: number;
}

/** Longest picture a book keeps [characters of its data address]. */
export const LARGEST_PICTURE = 700_000;
