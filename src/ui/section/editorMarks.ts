import { lineAt } from '$src/core/section/lineAt';
import type { Section } from '$src/core/section/section';
import type { Box } from '$src/report/drawing/box';
import { measuresOf } from '$src/report/drawing/dimensions';
import { lengthFigure } from '$src/report/drawing/lengthFigure';
import { steelAround } from '$src/report/drawing/steel';
import { type Spot, toPage, type View } from '../drawing/view';
import { type Handle, handleKey, handlesOf, placeOf } from './handles';

/** Half a handle with a little air [px]. */
const HANDLE = 8;
const CHARACTER = 6.8;

const around = ({ x, y }: Spot, reach: number): Box => ({
  left: x - reach,
  right: x + reach,
  top: y - reach,
  bottom: y + reach,
});

/** In the gap at the mouth, off the corners [m]: where the mouth is held. */
export function mouthY({ floor, roof, mouth }: Section): number {
  const low = lineAt(floor, mouth, 'right');
  return low + (lineAt(roof, mouth, 'right') - low) * 0.6;
}

/** How far off its place a handle is held: the pivot, when a corner lies on it [px]. */
export function asideOf(section: Section, handle: Handle, view: View): Spot {
  const at = toPage(view, section.pivot);
  const isCovered = [...section.floor, ...section.roof]
    .map((corner) => toPage(view, corner))
    .some((corner) => Math.hypot(corner.x - at.x, corner.y - at.y) < 20);
  return handle.kind === 'pivot' && isCovered ? { x: 22, y: 22 } : { x: 0, y: 0 };
}

/** Where a handle is drawn [px]. */
export function handleSpot(section: Section, handle: Handle, view: View): Spot {
  const at = toPage(view, placeOf(section, handle, mouthY(section)));
  const aside = asideOf(section, handle, view);
  return { x: at.x + aside.x, y: at.y + aside.y };
}

/** The tag beside a chosen handle: what it says and where it stands [px]. */
export interface HandleTag {
  readonly text: string;
  readonly box: Box;
}

export const TAG_HEIGHT = 22;

/** Tag of a handle, with its place in the page's unit. */
export function handleTag(section: Section, handle: Handle, view: View, unit: 'mm' | 'in'): HandleTag {
  const spot = handleSpot(section, handle, view);
  const { x, y } = placeOf(section, handle, mouthY(section));
  const place = [x, ...(handle.kind === 'mouth' ? [] : [y])]
    .map((value) => lengthFigure(value, unit))
    .join(', ');
  const text = `${handleKey(handle)}  ${place}`;
  const width = text.length * 6.6 + 14;
  const left = spot.x + 16 + width > view.width ? spot.x - 16 - width : spot.x + 16;
  const top = Math.max(4, spot.y - 38);
  return { text, box: { left, right: left + width, top, bottom: top + TAG_HEIGHT } };
}

/**
 * Room that handles, the tag of the chosen one and the figures of gaps take: words that can stand elsewhere keep off
 * it [px]. Gaps are measured only where the die axis lies level.
 */
export function editorMarks(
  section: Section,
  view: View,
  unit: 'mm' | 'in',
  chosen: string | null,
  isMeasured: boolean,
): Box[] {
  const handles = handlesOf(section);
  const tagged = handles.find((handle) => handleKey(handle) === chosen);
  const held = [
    ...handles.map((handle) => around(handleSpot(section, handle, view), HANDLE)),
    ...(tagged ? [handleTag(section, tagged, view, unit).box] : []),
  ];
  if (!isMeasured) return held;
  const gaps = measuresOf(section, steelAround(section)).filter(({ side }) => side === 'inside');
  return [
    ...held,
    ...gaps.map(({ from, to, value }) => {
      const [low, high] = [toPage(view, from), toPage(view, to)];
      const reach = lengthFigure(value, unit).length * CHARACTER + 8;
      return { left: low.x - reach, right: low.x + reach, top: high.y, bottom: low.y };
    }),
  ];
}
