import { millimetres } from '$src/core/section/millimetres';
import type { DrawnLine } from '$src/fromDrawing/drawing';
import { type Placing, placed } from '$src/fromDrawing/placing';

/** A line of a drawing in a list: "cavity: line 1, closed, 355 × 100 mm", the size along and square to the die as it is placed. */
export function lineWords(
  line: DrawnLine,
  placing: Placing,
): { readonly name: string; readonly size: string } {
  const layer = line.layer === '' ? '' : `${line.layer}: `;
  return {
    name: `${layer}${line.name}, ${line.isClosed ? 'closed' : 'open'}`,
    size: sizeOf(line, placing),
  };
}

function sizeOf({ points }: DrawnLine, placing: Placing): string {
  const laid = points.map(placed(placing));
  const extent = (values: readonly number[]): string =>
    millimetres(values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b)));
  return `${extent(laid.map(({ x }) => x))} × ${extent(laid.map(({ y }) => y))} mm`;
}
