import type { DrawnLine } from '$src/fromDrawing/drawing';

/** Numbers of the lines that are most likely floor and roof, for a person to correct. */
export function likelyLines(lines: readonly DrawnLine[]): { readonly floor: number; readonly roof: number } {
  const named = (pattern: RegExp): number =>
    lines.findIndex(({ name, layer }) => pattern.test(`${layer} ${name}`));
  const [floor, roof] = [named(/floor|bottom|lower/i), named(/roof|top|upper/i)];
  if (floor >= 0 && roof >= 0 && floor !== roof) return { floor, roof };
  const byLength = lines
    .map((line, index) => ({ index, line, width: widthOf(line) }))
    .sort((a, b) => b.width - a.width);
  const [first, second] = byLength;
  if (!first) return { floor: -1, roof: -1 };
  if (first.line.isClosed || !second) return { floor: first.index, roof: first.index };
  const isFirstLower = heightOf(first.line) <= heightOf(second.line);
  return isFirstLower
    ? { floor: first.index, roof: second.index }
    : { floor: second.index, roof: first.index };
}

const widthOf = ({ points }: DrawnLine): number => {
  const xs = points.map(({ x }) => x);
  return Math.max(...xs) - Math.min(...xs);
};
const heightOf = ({ points }: DrawnLine): number => points.reduce((sum, { y }) => sum + y, 0) / points.length;
