import { fromDegrees } from '$src/core/units';
import type { Box } from '$src/report/drawing/box';
import { angleText } from '$src/report/wording';
import { labelSize } from './labels';
import type { View } from './view';

/** A named figure of the arc is left out nearer to the pointer than this. */
const FIGURES_APART = fromDegrees(7);

/** Angles of the stroke that have a figure on the arc [rad]: each thirty degrees, but not under the pointer. */
export function arcFigures(start: number, end: number, inclination: number): number[] {
  const step = fromDegrees(30);
  const [low, high] = [
    Math.ceil(Math.min(start, end) / step - 1e-9),
    Math.floor(Math.max(start, end) / step + 1e-9),
  ];
  return Array.from({ length: Math.max(0, high - low + 1) }, (_, i) => (low + i) * step).filter(
    (angle) => Math.abs(angle - inclination) > FIGURES_APART,
  );
}

/** How far off the arc of the stroke its figures stand [px]. */
export const FIGURE_OFF = 8;
/** Half the room round the pointer's head [px]. */
const HEAD = 9;

/** Room of the figures on the arc of the stroke and of its pointer [px]: names and pins keep off. */
export function arcBoxes(
  view: View,
  radius: number,
  stroke: { start: number; end: number },
  inclination: number,
): Box[] {
  const spot = (angle: number, reach: number) => ({
    x: view.origin.x + reach * Math.cos(angle),
    y: view.origin.y - reach * Math.sin(angle),
  });
  const reach = radius * view.scale;
  const figure = (angle: number, off: number, text: string, drop: number): Box => {
    const at = spot(angle, reach + off);
    const { width, height } = labelSize([text]);
    const isBeside = Math.cos(angle) > 0.5;
    const left = isBeside ? at.x : at.x - width / 2;
    const top = at.y - height / 2 + (isBeside ? 0 : drop);
    return { left, right: left + width, top, bottom: top + height };
  };
  const head = spot(inclination, reach - 6);
  return [
    { left: head.x - HEAD, right: head.x + HEAD, top: head.y - HEAD, bottom: head.y + HEAD },
    figure(inclination, FIGURE_OFF, angleText(inclination), 8),
    ...arcFigures(stroke.start, stroke.end, inclination).map((angle) =>
      figure(angle, 10, angleText(angle, 0), 6),
    ),
  ];
}
