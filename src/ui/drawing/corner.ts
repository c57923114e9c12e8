import type { Point } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import type { Box } from '$src/report/drawing/box';
import { bodyMeetsBox } from './labels';
import { toPage, type View } from './view';

export type Corner = 'bottom left' | 'top right' | 'bottom right' | 'top left';
const ORDER: readonly Corner[] = ['bottom left', 'bottom right', 'top left', 'top right'];
const INSET = 12;

export function boxInCorner(
  corner: Corner,
  picture: { width: number; height: number },
  width: number,
  height: number,
): Box {
  const left = corner.endsWith('left') ? INSET : picture.width - INSET - width;
  const top = corner.startsWith('top') ? INSET : picture.height - INSET - height;
  return { left, top, right: left + width, bottom: top + height };
}

/** A corner the body leaves free through the whole sweep; null when it passes through all of them. */
export function freeCorner(
  view: View,
  bodies: readonly (readonly Point[])[],
  sweep: { readonly start: number; readonly end: number },
  size: { readonly width: number; readonly height: number },
  order: readonly Corner[] = ORDER,
): Corner | null {
  const turns = turnsOf(sweep.start, sweep.end);
  return (
    order.find((corner) => {
      const box = boxInCorner(corner, view, size.width, size.height);
      return turns.every((turn) => {
        const turned = { ...view, turn };
        return !bodies.some((body) =>
          bodyMeetsBox(
            body.map((p) => toPage(turned, p)),
            box,
          ),
        );
      });
    }) ?? null
  );
}

function turnsOf(start: number, end: number): number[] {
  const steps = Math.max(1, Math.ceil(Math.abs(start - end) / fromDegrees(6)));
  return Array.from({ length: steps + 1 }, (_, i) => start + ((end - start) * i) / steps);
}
