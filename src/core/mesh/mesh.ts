import type { Section } from '$src/core/section/section';
import { openCells, SAME_PLACE, type Sides, twoSidedLines } from './sides';
import { cellWidths, type Widths } from './widths';

/** A rim where metal leaves: the open mesh cell beside it and the rim's place [m]. */
export interface Rim {
  readonly cell: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Mesh cells of a section and the faces between them, all lengths [m] in the die frame.
 *
 * Cell i lies between faces i and i + 1 (x[i] to x[i + 1]). Floor and roof are two-sided, so vertical steps sit
 * on faces. Path lengths run along the floor: velocity, spacing and areas are taken along and square to the
 * floor, so a ramp at any angle to the axis carries the right gravity, timing and discharge.
 */
export interface Mesh {
  readonly cells: number;
  readonly x: Float64Array;
  readonly floorLeft: Float64Array;
  readonly floorRight: Float64Array;
  readonly roofLeft: Float64Array;
  readonly roofRight: Float64Array;
  /** Width into the page, all cavities together [m]: mean over the cell's section, and at its left and right face. */
  readonly width: Float64Array;
  readonly widthLeft: Float64Array;
  readonly widthRight: Float64Array;
  /** Volume of the full cell [m³]. */
  readonly volume: Float64Array;
  /** Length of the floor across the cell [m], and the cosine and sine of its angle to the axis. */
  readonly path: Float64Array;
  readonly floorCos: Float64Array;
  readonly floorSin: Float64Array;
  /** 1 under an opening, where the roof is virtual. */
  readonly open: Uint8Array;
  /** Per face: sill and ceiling of the passage, its width (the narrower at a step), floor path between the cell centres beside it. */
  readonly sill: Float64Array;
  readonly ceiling: Float64Array;
  readonly faceWidth: Float64Array;
  readonly facePath: Float64Array;
  /** 1 where the floor jumps at the face. */
  readonly step: Uint8Array;
  readonly tables: StepTables;
  /** Face at the mouth: cells from here on belong to the die. */
  readonly mouthFace: number;
  /** Path along the floor from the mouth to each face [m], negative in the basin. */
  readonly facePlace: Float64Array;
  readonly rims: readonly Rim[];
  readonly pivotX: number;
  readonly pivotY: number;
  /** Seen from below, see `mirrorMesh`: metal in open cells falls out. */
  readonly upsideDown: boolean;
}

/** What the step would otherwise divide and subtract again and again. */
export interface StepTables {
  /** Per face: free height, one over the floor path, and how far the floor of the left and the right cell lies above the sill. */
  readonly free: Float64Array;
  readonly perPath: Float64Array;
  readonly leftOverSill: Float64Array;
  readonly rightOverSill: Float64Array;
  /** Per face: its place from the pivot along x and y, and how far outward from it the floor of the left and the right cell leads. */
  readonly armX: Float64Array;
  readonly armY: Float64Array;
  readonly outwardFromLeft: Float64Array;
  readonly outwardFromRight: Float64Array;
  /** Per cell: one over its area seen along y, and over its area along the floor path. */
  readonly perFootprint: Float64Array;
  readonly perFloorArea: Float64Array;
}

/** Floors steeper than this to the axis are treated as if at this angle: the path would outgrow the cell. */
export const STEEPEST_FLOOR_COS = 0.17;

/**
 * Cuts a section into mesh cells. Every x of a floor or roof point, of the mouth and of a region's end is a
 * face; between two such places there are round(length / spacing), at least one, equal cells.
 *
 * @param meshCells cells wanted along the whole section, whole, 1 or more; the mesh has about as many
 * @throws RangeError when meshCells is not a whole number ≥ 1
 */
export function buildMesh(section: Section, meshCells: number): Mesh {
  if (!Number.isInteger(meshCells) || meshCells < 1)
    throw new RangeError(`mesh cells: got ${meshCells}, expected a whole number of 1 or more`);
  const x = cutAxis(section, meshCells);
  const cells = x.length - 1;
  const open = openCells(section, x);
  const sides = twoSidedLines(section, x, open);
  const widths = cellWidths(section, x, sides);
  const { width } = widths;
  const paths = floorPaths(x, sides.floorLeft, sides.floorRight);
  const faces = facePassages(sides, widths, paths.path);
  const { x: pivotX, y: pivotY } = section.pivot;
  const tables = stepTables({ x, width, ...sides, ...paths, ...faces, pivotX, pivotY });
  const mouthFace = nearestFace(x, section.mouth);
  return {
    cells,
    x,
    ...sides,
    ...widths,
    volume: Float64Array.from(
      { length: cells },
      (_, i) =>
        (width[i]! *
          (x[i + 1]! - x[i]!) *
          (sides.roofLeft[i]! - sides.floorLeft[i]! + sides.roofRight[i]! - sides.floorRight[i]!)) /
        2,
    ),
    ...paths,
    open,
    ...faces,
    tables,
    mouthFace,
    facePlace: placesFromMouth(paths.path, mouthFace),
    rims: findRims(section, x),
    pivotX,
    pivotY,
    upsideDown: false,
  };
}

function cutAxis(section: Section, meshCells: number): Float64Array {
  const start = section.floor[0]!.x;
  const end = section.floor.at(-1)!.x;
  const marks = [...section.floor, ...section.roof].map((point) => point.x);
  marks.push(section.mouth, ...section.regions.map((region) => region.end));
  const breaks = [...new Set(marks)].filter((mark) => mark >= start && mark <= end).sort((a, b) => a - b);
  const distinct = breaks.filter((mark, i) => i === 0 || mark - breaks[i - 1]! > SAME_PLACE);
  const spacing = (end - start) / meshCells;
  const faces = [start];
  for (let k = 1; k < distinct.length; k++) {
    const from = distinct[k - 1]!;
    const length = distinct[k]! - from;
    const count = Math.max(1, Math.round(length / spacing));
    for (let i = 1; i < count; i++) faces.push(from + (length * i) / count);
    faces.push(distinct[k]!);
  }
  return Float64Array.from(faces);
}

function floorPaths(
  x: Float64Array,
  left: Float64Array,
  right: Float64Array,
): { path: Float64Array; floorCos: Float64Array; floorSin: Float64Array } {
  const cells = x.length - 1;
  const path = new Float64Array(cells);
  const floorCos = new Float64Array(cells);
  const floorSin = new Float64Array(cells);
  for (let i = 0; i < cells; i++) {
    const run = x[i + 1]! - x[i]!;
    const rise = right[i]! - left[i]!;
    floorCos[i] = Math.max(run / Math.hypot(run, rise), STEEPEST_FLOOR_COS);
    floorSin[i] = Math.sign(rise) * Math.sqrt(1 - floorCos[i]! ** 2);
    path[i] = run / floorCos[i]!;
  }
  return { path, floorCos, floorSin };
}

function facePassages(sides: Sides, { widthLeft, widthRight }: Widths, path: Float64Array) {
  const cells = path.length;
  const sill = new Float64Array(cells + 1);
  const ceiling = new Float64Array(cells + 1);
  const faceWidth = new Float64Array(cells + 1);
  const facePath = new Float64Array(cells + 1);
  const step = new Uint8Array(cells + 1);
  for (let j = 0; j <= cells; j++) {
    const l = Math.max(j - 1, 0);
    const r = Math.min(j, cells - 1);
    const floorOnLeft = j === 0 ? sides.floorLeft[0]! : sides.floorRight[l]!;
    const floorOnRight = j === cells ? sides.floorRight[r]! : sides.floorLeft[r]!;
    const roofOnLeft = j === 0 ? sides.roofLeft[0]! : sides.roofRight[l]!;
    const roofOnRight = j === cells ? sides.roofRight[r]! : sides.roofLeft[r]!;
    sill[j] = Math.max(floorOnLeft, floorOnRight);
    ceiling[j] = Math.min(roofOnLeft, roofOnRight);
    faceWidth[j] = Math.min(
      j === 0 ? widthLeft[0]! : widthRight[l]!,
      j === cells ? widthRight[r]! : widthLeft[r]!,
    );
    facePath[j] = (path[l]! + path[r]!) / 2;
    step[j] = Math.abs(floorOnLeft - floorOnRight) > SAME_PLACE ? 1 : 0;
  }
  return { sill, ceiling, faceWidth, facePath, step };
}

type TableSource =
  | 'x'
  | 'width'
  | 'path'
  | 'floorLeft'
  | 'floorRight'
  | 'floorCos'
  | 'floorSin'
  | 'sill'
  | 'ceiling'
  | 'facePath'
  | 'pivotX'
  | 'pivotY';

/** The step's tables for a mesh that has all else. */
export function stepTables(mesh: Pick<Mesh, TableSource>): StepTables {
  const { x, width, path, floorLeft, floorRight, floorCos, floorSin, sill, ceiling, facePath } = mesh;
  const last = width.length - 1;
  const leftOf = (j: number) => Math.max(j - 1, 0);
  const rightOf = (j: number) => Math.min(j, last);
  const armX = x.map((place) => place - mesh.pivotX);
  const armY = x.map((_, j) => (floorLeft[rightOf(j)]! + floorRight[leftOf(j)]!) / 2 - mesh.pivotY);
  const outward = (j: number, cell: number) => armX[j]! * floorCos[cell]! + armY[j]! * floorSin[cell]!;
  return {
    free: ceiling.map((height, j) => height - sill[j]!),
    perPath: facePath.map((length) => 1 / length),
    leftOverSill: sill.map((height, j) => floorRight[leftOf(j)]! - height),
    rightOverSill: sill.map((height, j) => floorLeft[rightOf(j)]! - height),
    armX,
    armY,
    outwardFromLeft: x.map((_, j) => outward(j, leftOf(j))),
    outwardFromRight: x.map((_, j) => outward(j, rightOf(j))),
    perFootprint: width.map((wide, i) => 1 / (wide * (x[i + 1]! - x[i]!))),
    perFloorArea: width.map((wide, i) => 1 / (wide * path[i]!)),
  };
}

function nearestFace(x: Float64Array, place: number): number {
  let best = 0;
  for (let j = 1; j < x.length; j++) if (Math.abs(x[j]! - place) < Math.abs(x[best]! - place)) best = j;
  return best;
}

function placesFromMouth(path: Float64Array, mouthFace: number): Float64Array {
  const places = new Float64Array(path.length + 1);
  for (let j = mouthFace + 1; j <= path.length; j++) places[j] = places[j - 1]! + path[j - 1]!;
  for (let j = mouthFace - 1; j >= 0; j--) places[j] = places[j + 1]! - path[j]!;
  return places;
}

function findRims(section: Section, x: Float64Array): Rim[] {
  const rims: Rim[] = [];
  const last = x.length - 2;
  for (const opening of section.openings) {
    if (opening.wall === 'back wall') {
      const foot = section.floor[0]!;
      rims.push({ cell: 0, x: foot.x, y: foot.y });
      continue;
    }
    const from = section.roof[opening.from]!;
    const to = section.roof[opening.to]!;
    rims.push({ cell: Math.min(nearestFace(x, from.x), last), x: from.x, y: from.y });
    rims.push({ cell: Math.max(nearestFace(x, to.x) - 1, 0), x: to.x, y: to.y });
  }
  return rims;
}
