import { scaleLinear } from 'd3';
import type { StudyAxis } from '$src/report/study/study';

/** Where a map of two settings lies on its paper, and its scales from a setting to pixels [px]. */
export interface MapPlot {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly across: (pixel: number) => number;
  readonly up: (pixel: number) => number;
}

const [LEFT, TOP, RIGHT, BOTTOM] = [46, 26, 14, 44];

/** Axes across and up laid out on paper of `width` × `height` pixels. */
export function mapPlot(across: StudyAxis, up: StudyAxis, width: number, height: number): MapPlot {
  const box = { left: LEFT, top: TOP, right: Math.max(120, width - RIGHT), bottom: height - BOTTOM };
  const x = scaleLinear([across.from, across.to], [box.left, box.right]);
  const y = scaleLinear([up.from, up.to], [box.bottom, box.top]);
  return {
    ...box,
    x: (value) => x(value),
    y: (value) => y(value),
    across: (pixel) => x.invert(pixel),
    up: (pixel) => y.invert(pixel),
  };
}
