import type { MeshOutline } from '$src/core/pour/record';
import { type EdgeNode, THINNEST } from './edgeNode';

const NOSE_POINTS = 6;

/** Gives a stretch that ends in the open a blunt round nose instead of a cliff. */
export function roundNoses(
  nodes: readonly EdgeNode[],
  outline: MeshOutline,
  from: number,
  to: number,
): EdgeNode[] {
  const cells = outline.x.length - 1;
  const last = nodes[nodes.length - 1]!;
  const first = nodes[0]!;
  const wallRight = to + 1 >= cells ? Infinity : outline.floorLeft[to + 1]!;
  const wallLeft = from === 0 ? Infinity : outline.floorRight[from - 1]!;
  let rounded = [...nodes];
  if (last.top - last.floor > THINNEST && wallRight < last.top)
    rounded = roundEnd(rounded, Math.max(wallRight, last.floor));
  if (first.top - first.floor > THINNEST && wallLeft < first.top) {
    rounded = mirrored(roundEnd(mirrored(rounded), Math.max(wallLeft, first.floor)));
  }
  return rounded;
}

/** The same edge walked from the other end; `free` belongs to the piece before a node, so it moves by one. */
function mirrored(nodes: readonly EdgeNode[]): EdgeNode[] {
  return nodes.map((n, i) => ({ ...n, x: -n.x, free: nodes[i + 1]?.free ?? false })).reverse();
}

/** Replaces the last half depth of an edge by a quarter of an ellipse down to `foot`. */
function roundEnd(nodes: readonly EdgeNode[], foot: number): EdgeNode[] {
  const last = nodes[nodes.length - 1]!;
  const reach = Math.min((last.top - foot) / 2, (last.x - nodes[0]!.x) / 2);
  const back = last.x - reach;
  const kept = nodes.filter((n) => n.x < back);
  const shoulder = interpolated(nodes, back);
  const arc = Array.from({ length: NOSE_POINTS }, (_, i) => {
    const angle = ((i + 1) / NOSE_POINTS) * (Math.PI / 2);
    const x = back + reach * Math.sin(angle);
    const floor = interpolated(nodes, x).floor;
    const low = i === NOSE_POINTS - 1 ? floor : foot + (shoulder.top - foot) * Math.cos(angle);
    return { x, floor: Math.min(floor, low), top: Math.max(low, floor), free: true };
  });
  return [...kept, shoulder, ...arc];
}

function interpolated(nodes: readonly EdgeNode[], x: number): EdgeNode {
  for (let i = nodes.length - 1; i > 0; i--) {
    const a = nodes[i - 1]!;
    const b = nodes[i]!;
    if (x > b.x || x < a.x || a.x === b.x) continue;
    const s = (x - a.x) / (b.x - a.x);
    return { x, floor: a.floor + (b.floor - a.floor) * s, top: a.top + (b.top - a.top) * s, free: b.free };
  }
  return { ...nodes[nodes.length - 1]!, x };
}
