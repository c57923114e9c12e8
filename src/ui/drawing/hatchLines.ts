import type { Spot } from './view';

/**
 * Hatch of a closed outline as one path of straight strokes, cut at its edges: a browser without a graphics card
 * draws it many times faster than a repeated pattern once the body turns. `lean` −1 rises to the right, 1 falls.
 */
export function hatchLines(outline: readonly Spot[], spacing: number, lean: 1 | -1): string {
  const across = outline.map(({ x, y }) => (x - lean * y) / Math.SQRT2);
  const along = outline.map(({ x, y }) => (lean * x + y) / Math.SQRT2);
  const first = Math.ceil(Math.min(...across) / spacing);
  const last = Math.floor(Math.max(...across) / spacing);
  let d = '';
  for (let k = first; k <= last; k++) {
    const cuts = cutsAt(k * spacing, across, along);
    for (let i = 0; i + 1 < cuts.length; i += 2)
      d += stroke(k * spacing, cuts[i]!, lean) + stroke(k * spacing, cuts[i + 1]!, lean).replace('M', 'L');
  }
  return d;
}

/** Where a line of the hatch crosses the outline, in order along the line. */
function cutsAt(at: number, across: readonly number[], along: readonly number[]): number[] {
  const cuts: number[] = [];
  for (let i = 0; i < across.length; i++) {
    const j = (i + 1) % across.length;
    const [a, b] = [across[i]!, across[j]!];
    // An end counts on one side only, so that a line through a corner crosses an even number of edges.
    if (a < at === b < at) continue;
    cuts.push(along[i]! + ((along[j]! - along[i]!) * (at - a)) / (b - a));
  }
  return cuts.sort((one, other) => one - other);
}

function stroke(across: number, along: number, lean: 1 | -1): string {
  const x = (across + lean * along) / Math.SQRT2;
  const y = (along - lean * across) / Math.SQRT2;
  return `M${x.toFixed(1)} ${y.toFixed(1)}`;
}
