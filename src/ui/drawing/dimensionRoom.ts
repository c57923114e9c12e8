import type { Section } from '$src/core/section/section';
import type { Box } from '$src/report/drawing/box';
import { measuresOf } from '$src/report/drawing/dimensions';
import type { Steel } from '$src/report/drawing/steel';
import { toPage, type View } from './view';

/** A figure stands on its line, this high, and the line this far off the body [px]. */
const FIGURE = 18;
const STAND = 24;

/** Room that the dimension lines below and above the body take with their figures: names keep off it [px]. */
export function dimensionRoom(section: Section, steel: Steel, view: View): Box[] {
  const lowest = toPage(view, { x: section.mouth, y: Math.min(...steel.corners.map(({ y }) => y)) }).y;
  const above = measuresOf(section, steel).filter(({ side }) => side === 'above');
  return [
    { left: 0, right: view.width, top: lowest + 8, bottom: lowest + 30 },
    ...above.map(({ from, to }) => {
      const [a, b] = [toPage(view, from), toPage(view, to)];
      return { left: a.x, right: b.x, top: a.y - STAND - FIGURE, bottom: a.y - STAND + 1 };
    }),
  ];
}
