import DxfParser from 'dxf-parser';
import type { Point } from '$src/core/section/section';
import { fromInches, fromMillimetres } from '$src/core/units';
import { arcPoints, bulgePoints } from './curves';
import { type DrawnLine, drawingOf, LARGEST_DRAWING, passedOver, type ReadDrawing, refuse } from './drawing';
import { joined } from './joined';
import { tooLarge } from './readSvg';

/** Metres of one drawing unit by the header's $INSUNITS (DXF reference, HEADER section). */
const UNITS: Readonly<Record<number, number>> = {
  1: fromInches(1),
  2: fromInches(12),
  4: fromMillimetres(1),
  5: fromMillimetres(10),
  6: 1,
};

/** An entity as the parser gives it, with the fields that are read here. */
interface Entity {
  readonly type: string;
  readonly layer?: string;
  readonly vertices?: readonly (Point & { readonly bulge?: number })[];
  readonly shape?: boolean;
  readonly center?: Point;
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
}

interface Parsed {
  readonly entities?: readonly Entity[];
  readonly header?: Readonly<Record<string, unknown>>;
}

/** Reads lines, polylines and arcs of a DXF drawing in text form; lines that meet end to end on a layer become one. */
export function readDxf(text: string): ReadDrawing {
  if (text.length > LARGEST_DRAWING) return tooLarge(text.length);
  const wrong = (reason: string): ReadDrawing =>
    refuse(
      `The file is not readable as DXF: ${reason}`,
      'Save the drawing as DXF in text form (not binary), and open it again.',
    );
  let parsed: Parsed | null;
  try {
    parsed = new DxfParser().parseSync(text) as unknown as Parsed | null;
  } catch (error) {
    return wrong(error instanceof Error ? error.message : String(error));
  }
  const entities = parsed?.entities ?? [];
  if (entities.length === 0) return wrong('it has no entities.');
  const passed = new Map<string, number>();
  const pieces = entities.flatMap((entity): DrawnLine[] => {
    const piece = pieceOf(entity);
    if (piece) return [piece];
    const what = entity.type.toLowerCase();
    passed.set(what, (passed.get(what) ?? 0) + 1);
    return [];
  });
  const named = joined(pieces).map((line, index) => ({ ...line, name: `line ${index + 1}` }));
  return drawingOf(named, UNITS[Number(parsed?.header?.['$INSUNITS'])] ?? null, passedOver(passed));
}

function pieceOf(entity: Entity): DrawnLine | null {
  const points = pointsOf(entity);
  if (points === null || points.some(({ x, y }) => !(Number.isFinite(x) && Number.isFinite(y)))) return null;
  const isClosed = entity.shape === true && entity.type !== 'LINE';
  return { layer: entity.layer ?? '', name: '', points, isClosed };
}

function pointsOf({ type, vertices, shape, center, radius, startAngle, endAngle }: Entity): Point[] | null {
  if (type === 'LINE' && vertices) return vertices.map(({ x, y }) => ({ x, y }));
  if ((type === 'LWPOLYLINE' || type === 'POLYLINE') && vertices && vertices.length > 1)
    return polyline(vertices, shape === true);
  if (
    type === 'ARC' &&
    center &&
    radius !== undefined &&
    startAngle !== undefined &&
    endAngle !== undefined
  ) {
    // Arcs run anticlockwise from start to end.
    const turn = 2 * Math.PI;
    return arcPoints(center, radius, startAngle, (((endAngle - startAngle) % turn) + turn) % turn || turn);
  }
  return null;
}

function polyline(vertices: NonNullable<Entity['vertices']>, isClosed: boolean): Point[] {
  const first = { x: vertices[0]!.x, y: vertices[0]!.y };
  const ends = isClosed ? [...vertices.slice(1), vertices[0]!] : vertices.slice(1);
  return [
    first,
    ...ends.flatMap(({ x, y }, index) =>
      bulgePoints(vertices[index]!, { x, y }, vertices[index]!.bulge ?? 0),
    ),
  ];
}
