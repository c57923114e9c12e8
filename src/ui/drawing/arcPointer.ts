import { angleText } from '$src/report/wording';
import { type Box, labelSize } from './labels';
import type { View } from './view';

/** How far off the arc of the stroke its figures stand [px]. */
export const FIGURE_OFF = 8;
/** Half the room round the pointer's head [px]. */
const HEAD = 9;

/** Room of the pointer on the arc of the stroke and of its figure [px]: names and pins keep off. */
export function arcPointerBoxes(view: View, radius: number, inclination: number): Box[] {
  const spot = (reach: number) => ({
    x: view.origin.x + reach * Math.cos(inclination),
    y: view.origin.y - reach * Math.sin(inclination),
  });
  const reach = radius * view.scale;
  const head = spot(reach - 6);
  const figure = spot(reach + FIGURE_OFF);
  const { width, height } = labelSize([angleText(inclination)]);
  const isBeside = Math.cos(inclination) > 0.5;
  const left = isBeside ? figure.x : figure.x - width / 2;
  const top = figure.y - height / 2 + (isBeside ? 0 : 8);
  return [
    { left: head.x - HEAD, right: head.x + HEAD, top: head.y - HEAD, bottom: head.y + HEAD },
    { left, right: left + width, top, bottom: top + height },
  ];
}
