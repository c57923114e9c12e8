import type { MeshOutline } from '$src/core/pour/record';
import type { Point } from '$src/core/section/section';

/** Metal as drawn, in the die frame [m]: filled bodies and the free surface. Where metal touches steel there is no skin. */
export interface MetalShape {
  readonly bodies: readonly (readonly Point[])[];
  readonly skins: readonly (readonly Point[])[];
}

/** A place on the upper edge of the metal. `free` says what the edge is from the node before to this one. */
interface Node {
  readonly x: number;
  readonly floor: number;
  readonly top: number;
  readonly free: boolean;
}

/** Thinner metal is not drawn [m]. */
const THINNEST = 1e-6;
/** Points that lie closer than this to a straight line are left out [m]. */
const STRAIGHT = 3e-5;
const NOSE_POINTS = 6;
/** Cosines smaller than this are 0: the body stands upright. */
const UPRIGHT = 1e-12;

/**
 * Metal of one frame of a record. `levelOf` gives the lab elevation of the surface in a mesh cell [m], NaN where dry.
 *
 * Levels are joined at the faces of wet neighbours, so that the surface is one line; inside a cell the surface is the
 * straight line between its two face levels, cut by floor and roof. No division by cos(inclination): it holds at −90°. Beyond
 * the upright the roof lies under the metal, so the outline is drawn upside down and turned back: elevations stay.
 */
export function metalOfFrame(
  outline: MeshOutline,
  inclination: number,
  levelOf: (cell: number) => number,
): MetalShape {
  if (Math.cos(inclination) < -UPRIGHT)
    return turnedOver(metalOfFrame(outlineTurned(outline), Math.PI - inclination, levelOf));
  const bodies: Point[][] = [];
  const skins: Point[][] = [];
  const cells = outline.x.length - 1;
  for (let from = 0; from < cells; from++) {
    if (Number.isNaN(levelOf(from))) continue;
    let to = from;
    while (to + 1 < cells && !Number.isNaN(levelOf(to + 1))) to++;
    addRun(bodies, skins, outline, inclination, levelOf, from, to);
    from = to;
  }
  return { bodies, skins };
}

const negated = (heights: ArrayLike<number>): Float64Array => Float64Array.from(heights, (y) => -y);

function outlineTurned(outline: MeshOutline): MeshOutline {
  return {
    ...outline,
    floorLeft: negated(outline.roofLeft),
    floorRight: negated(outline.roofRight),
    roofLeft: negated(outline.floorLeft),
    roofRight: negated(outline.floorRight),
  };
}

function turnedOver({ bodies, skins }: MetalShape): MetalShape {
  const over = (lines: readonly (readonly Point[])[]) =>
    lines.map((line) => line.map(({ x, y }) => ({ x, y: -y })));
  return { bodies: over(bodies), skins: over(skins) };
}

function addRun(
  bodies: Point[][],
  skins: Point[][],
  outline: MeshOutline,
  inclination: number,
  levelOf: (cell: number) => number,
  from: number,
  to: number,
): void {
  const nodes: Node[] = [];
  for (let cell = from; cell <= to; cell++) {
    const left = faceLevel(outline, inclination, levelOf, cell, cell - 1);
    const right = faceLevel(outline, inclination, levelOf, cell, cell + 1);
    addCell(nodes, outline, inclination, cell, left, right);
  }
  for (const stretch of wetStretches(nodes)) {
    const rounded = roundNoses(stretch, outline, from, to);
    bodies.push([...straightened(rounded.map(topOf)), ...straightened(rounded.map(floorOf)).reverse()]);
    skins.push(...freeStretches(rounded));
  }
}

const topOf = (n: Node): Point => ({ x: n.x, y: n.top });
const floorOf = (n: Node): Point => ({ x: n.x, y: n.floor });

/** Level of `cell` at its face towards `neighbour`: the mean of two free surfaces, else its own. */
function faceLevel(
  outline: MeshOutline,
  inclination: number,
  levelOf: (cell: number) => number,
  cell: number,
  neighbour: number,
): number {
  const own = levelOf(cell);
  if (neighbour < 0 || neighbour >= outline.x.length - 1) return own;
  const other = levelOf(neighbour);
  if (Number.isNaN(other)) return own;
  const onRight = neighbour > cell;
  const x = outline.x[onRight ? neighbour : cell]!;
  const roof = (onRight ? outline.roofLeft : outline.roofRight)[neighbour]!;
  const floor = (onRight ? outline.floorLeft : outline.floorRight)[neighbour]!;
  const ownFloor = (onRight ? outline.floorRight : outline.floorLeft)[cell]!;
  const along = x * Math.sin(inclination);
  const upright = Math.cos(inclination);
  const roofLevel = along + roof * upright;
  const stepped = other <= along + ownFloor * upright || own <= along + floor * upright;
  if (stepped) return own;
  if (other >= roofLevel && !outline.open[neighbour]) return own >= roofLevel ? own : (own + roofLevel) / 2;
  return (own + other) / 2;
}

/** Nodes of one mesh cell: its left edge, where the surface meets floor and roof inside, its right edge. */
function addCell(
  nodes: Node[],
  outline: MeshOutline,
  inclination: number,
  cell: number,
  levelLeft: number,
  levelRight: number,
): void {
  const x0 = outline.x[cell]!;
  const x1 = outline.x[cell + 1]!;
  const floor0 = outline.floorLeft[cell]!;
  const floor1 = outline.floorRight[cell]!;
  const roof0 = outline.roofLeft[cell]!;
  const roof1 = outline.roofRight[cell]!;
  const sine = Math.sin(inclination);
  const cosine = Math.cos(inclination);
  // How far a point lies above the surface; linear in the place, so its zeros on floor and roof are exact.
  const floorAbove0 = x0 * sine + floor0 * cosine - levelLeft;
  const floorAbove1 = x1 * sine + floor1 * cosine - levelRight;
  const roofAbove0 = x0 * sine + roof0 * cosine - levelLeft;
  const roofAbove1 = x1 * sine + roof1 * cosine - levelRight;
  const onFloor = zeroBetween(floorAbove0, floorAbove1);
  const onRoof = zeroBetween(roofAbove0, roofAbove1);
  const cuts: Cut[] = [
    { s: 0, on: 'edge' },
    ...orderedCuts(onFloor, onRoof, floorAbove0 > 0),
    { s: 1, on: 'edge' },
  ];
  const open = outline.open[cell] === 1;
  let before = cuts[0]!;
  cuts.forEach((cut, i) => {
    const at = (left: number, right: number): number => left + (right - left) * cut.s;
    const halfway = (left: number, right: number): number => left + ((right - left) * (before.s + cut.s)) / 2;
    const floor = at(floor0, floor1);
    const roof = at(roof0, roof1);
    const roofAbove = at(roofAbove0, roofAbove1);
    const kept = between(floor, roof, at(floorAbove0, floorAbove1), roofAbove);
    const top = cut.on === 'edge' ? kept : cut.on === 'floor' ? floor : roof;
    // From floor to roof the surface may stand upright in the die frame: no width, and yet skin.
    const acrossTheGap = before.on !== 'edge' && cut.on !== 'edge';
    const inside = halfway(floorAbove0, floorAbove1) < 0 && (halfway(roofAbove0, roofAbove1) > 0 || open);
    const free = i === 0 ? joinsFreely(nodes, outline, cell, roofAbove > 0 || open) : acrossTheGap || inside;
    nodes.push({ x: at(x0, x1), floor, top, free });
    before = cut;
  });
}

/** Where along a mesh cell, 0 to 1, an edge of the metal has a node, and what it meets there. */
interface Cut {
  readonly s: number;
  readonly on: 'edge' | 'floor' | 'roof';
}

/** The two cuts in the order they must come in, also where rounding would swap them: metal to the right meets the floor first. */
function orderedCuts(onFloor: number, onRoof: number, metalRight: boolean): Cut[] {
  const floor: Cut[] = onFloor >= 0 ? [{ s: onFloor, on: 'floor' }] : [];
  if (onRoof < 0) return floor;
  if (onFloor < 0) return [{ s: onRoof, on: 'roof' }];
  return metalRight
    ? [...floor, { s: Math.max(onFloor, onRoof), on: 'roof' }]
    : [{ s: Math.min(onFloor, onRoof), on: 'roof' }, ...floor];
}

/** The upright piece of edge on the face between two cells is skin unless it runs up the steel of a step in the roof. */
function joinsFreely(nodes: readonly Node[], outline: MeshOutline, cell: number, freeHere: boolean): boolean {
  const before = nodes[nodes.length - 1];
  if (!before) return false;
  const clearOfSteel =
    before.top <= outline.roofLeft[cell]! + THINNEST && before.top >= outline.floorLeft[cell]! - THINNEST;
  return freeHere && clearOfSteel && before.top > before.floor;
}

function zeroBetween(a: number, b: number): number {
  return a < 0 !== b < 0 ? a / (a - b) : -1;
}

/** Height of the surface on the upright from floor to roof, kept between the two. */
function between(floor: number, roof: number, floorAbove: number, roofAbove: number): number {
  if (floorAbove >= 0) return floor;
  if (roofAbove <= 0) return roof;
  return floor + ((roof - floor) * -floorAbove) / (roofAbove - floorAbove);
}

/** Cuts a run where the metal thins out to nothing. */
function wetStretches(nodes: readonly Node[]): Node[][] {
  const stretches: Node[][] = [];
  let current: Node[] = [];
  const close = () => {
    if (current.some((n) => n.top - n.floor > THINNEST)) stretches.push(current);
    current = [];
  };
  nodes.forEach((node, i) => {
    const dry = node.top - node.floor <= THINNEST;
    const dryBefore = i > 0 && nodes[i - 1]!.top - nodes[i - 1]!.floor <= THINNEST;
    if (dry && dryBefore) {
      close();
      current = [node];
      return;
    }
    current.push(node);
  });
  close();
  return stretches;
}

/** Gives a stretch that ends in the open a blunt round nose instead of a cliff. */
function roundNoses(nodes: readonly Node[], outline: MeshOutline, from: number, to: number): Node[] {
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
function mirrored(nodes: readonly Node[]): Node[] {
  return nodes.map((n, i) => ({ ...n, x: -n.x, free: nodes[i + 1]?.free ?? false })).reverse();
}

/** Replaces the last half depth of an edge by a quarter of an ellipse down to `foot`. */
function roundEnd(nodes: readonly Node[], foot: number): Node[] {
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

function interpolated(nodes: readonly Node[], x: number): Node {
  for (let i = nodes.length - 1; i > 0; i--) {
    const a = nodes[i - 1]!;
    const b = nodes[i]!;
    if (x > b.x || x < a.x || a.x === b.x) continue;
    const s = (x - a.x) / (b.x - a.x);
    return { x, floor: a.floor + (b.floor - a.floor) * s, top: a.top + (b.top - a.top) * s, free: b.free };
  }
  return { ...nodes[nodes.length - 1]!, x };
}

/** The pieces of an edge that are free surface. */
function freeStretches(nodes: readonly Node[]): Point[][] {
  const skins: Point[][] = [];
  let current: Point[] = [];
  nodes.forEach((node, i) => {
    if (i > 0 && node.free) {
      if (current.length === 0) current.push(topOf(nodes[i - 1]!));
      current.push(topOf(node));
      return;
    }
    if (current.length > 1) skins.push(straightened(current));
    current = [];
  });
  if (current.length > 1) skins.push(straightened(current));
  return skins;
}

/**
 * The same line with fewer points: no point left out lies further than STRAIGHT from the new line.
 * From each kept point it holds the fan of directions that pass close enough to all points skipped since.
 */
export function straightened(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  let low = 0;
  let high = 0;
  let base = 0;
  let last: Point | null = null;
  for (const p of points) {
    const from = kept[kept.length - 1];
    if (!from) {
      kept.push(p);
      continue;
    }
    if (last && inFan(from, p, base, low, high) && distance(from, p) >= distance(from, last)) {
      const turn = turnFrom(from, p, base);
      const slack = STRAIGHT / distance(from, p);
      low = Math.max(low, turn - slack);
      high = Math.min(high, turn + slack);
      last = p;
      continue;
    }
    const anchor = last ?? from;
    if (distance(anchor, p) < 1e-9) continue;
    if (last) kept.push(last);
    base = Math.atan2(p.y - anchor.y, p.x - anchor.x);
    high = STRAIGHT / distance(anchor, p);
    low = -high;
    last = p;
  }
  if (last) kept.push(last);
  return kept;
}

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Direction from a to b against a base direction [rad], −π to π. */
function turnFrom(a: Point, b: Point, base: number): number {
  const turn = Math.atan2(b.y - a.y, b.x - a.x) - base;
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

function inFan(a: Point, b: Point, base: number, low: number, high: number): boolean {
  const turn = turnFrom(a, b, base);
  return turn >= low && turn <= high;
}
