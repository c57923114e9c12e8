import type { Point, Section } from '$src/core/section/section';
import type { Steel } from '$src/report/drawing/steel';
import { type Corner, freeCorner } from './corner';
import { type Margins, scaleToFit, sweepBounds, type View, viewAt } from './view';

export interface PictureWishes {
  readonly frame: 'page' | 'die';
  readonly small: boolean;
  readonly dimensions: boolean;
  readonly caption: boolean;
  readonly start: number;
  readonly end: number;
  /** [px] */
  readonly width: number;
  readonly maxHeight: number;
  /** [px per m]; null = as large as fits. */
  readonly scale: number | null;
}

/** Everything about a picture that stays the same through a stroke. */
export interface Layout {
  readonly view: Omit<View, 'turn'>;
  /** Radius of the arc of the stroke [m]; null where there is no room for it. */
  readonly arc: number | null;
  /** Where dial, gravity and scale bar stand. */
  readonly corner: Corner;
  readonly narrow: boolean;
}

/** Below this width a picture carries three names at most and no arc [px]. */
export const NARROW = 520;
/** Room for dial, gravity arrow and scale bar [px]. */
export const toolsSize = (narrow: boolean, small: boolean): { width: number; height: number } =>
  small ? { width: 34, height: 44 } : narrow ? { width: 150, height: 74 } : { width: 132, height: 112 };

export function layoutOf(section: Section, steel: Steel, wishes: PictureWishes): Layout {
  const narrow = wishes.width < NARROW;
  return wishes.frame === 'die'
    ? stillLayout(section, steel, wishes, narrow)
    : turningLayout(section, steel, wishes, narrow);
}

function stillLayout(section: Section, steel: Steel, wishes: PictureWishes, narrow: boolean): Layout {
  const bounds = sweepBounds(steel.corners, section.pivot, 0, 0);
  const margins = stillMargins(wishes, narrow);
  const scale = wishes.scale ?? scaleToFit(bounds, margins, wishes.width, wishes.maxHeight);
  const view = viewAt(bounds, margins, section.pivot, scale, wishes.width);
  return { view, arc: null, corner: 'top right', narrow };
}

function stillMargins(wishes: PictureWishes, narrow: boolean): Margins {
  if (wishes.small) return { left: 8, right: 8, top: 8, bottom: 8 };
  if (!wishes.dimensions) return { left: 28, right: narrow ? 28 : 96, top: 44, bottom: 52 };
  return narrow
    ? { left: 54, right: 18, top: 104, bottom: 78 }
    : { left: 72, right: 112, top: 78, bottom: 84 };
}

function turningLayout(section: Section, steel: Steel, wishes: PictureWishes, narrow: boolean): Layout {
  const { small, start, end, width } = wishes;
  const arc = small || narrow || width < 560 ? null : arcRadius(steel.corners, section.pivot);
  const body = sweepBounds(steel.corners, section.pivot, start, end);
  const reach = arc === null ? body : withArc(body, arc, start, end);
  const plain = turningMargins(wishes, narrow, arc !== null);
  const size = toolsSize(narrow, small);
  const order = cornersFor(wishes);
  const lay = (margins: Margins): { view: Omit<View, 'turn'>; corner: Corner | null } => {
    const scale = wishes.scale ?? scaleToFit(reach, margins, width, wishes.maxHeight);
    const view = viewAt(reach, margins, section.pivot, scale, width);
    const bodies = [steel.floorBlock, steel.shell, ...steel.roofBlocks];
    return { view, corner: freeCorner({ ...view, turn: 0 }, bodies, { start, end }, size, order) };
  };
  const first = lay(plain);
  if (small && !first.corner) {
    const aside = lay({ ...plain, right: plain.right + size.width + 12 });
    return { view: aside.view, arc, corner: aside.corner ?? 'top right', narrow };
  }
  if (first.corner) return { view: first.view, arc, corner: first.corner, narrow };
  const second = lay({ ...plain, bottom: plain.bottom + size.height * 0.6 });
  if (second.corner) return { view: second.view, arc, corner: second.corner, narrow };
  return {
    view: lay({ ...plain, bottom: plain.bottom + size.height }).view,
    arc,
    corner: 'bottom left',
    narrow,
  };
}

/** Corners that the tools may stand in, the best first; the caption has the one at the top left. */
function cornersFor({ small, caption }: PictureWishes): Corner[] | undefined {
  if (small) return ['top right', 'top left', 'bottom right', 'bottom left'];
  return caption ? ['bottom left', 'bottom right', 'top right'] : undefined;
}

function turningMargins(wishes: PictureWishes, narrow: boolean, arc: boolean): Margins {
  if (wishes.small) return { left: 8, right: 8, top: 8, bottom: 8 };
  const top = wishes.caption ? 44 : 22;
  if (narrow) return { left: 14, right: 14, top: top + 12, bottom: 22 };
  return { left: 26, right: arc ? 62 : 26, top: top + 14, bottom: 30 };
}

/** The arc runs just outside the farthest corner of the die half of the body. */
function arcRadius(corners: readonly Point[], pivot: Point): number {
  const reach = Math.max(
    ...corners.filter((p) => p.x > pivot.x).map((p) => Math.hypot(p.x - pivot.x, p.y - pivot.y)),
  );
  return reach * 1.05;
}

function withArc(
  body: ReturnType<typeof sweepBounds>,
  arc: number,
  start: number,
  end: number,
): ReturnType<typeof sweepBounds> {
  const along = sweepBounds([{ x: arc, y: 0 }], { x: 0, y: 0 }, start, end);
  return {
    left: Math.min(body.left, along.left),
    right: Math.max(body.right, along.right),
    top: Math.min(body.top, along.top),
    bottom: Math.max(body.bottom, along.bottom),
  };
}

/** Scale at which a section's picture fits [px per m]; pictures side by side take the smallest of theirs. */
export function fittingScale(section: Section, steel: Steel, wishes: Omit<PictureWishes, 'scale'>): number {
  return layoutOf(section, steel, { ...wishes, scale: null }).view.scale;
}
