import { parseXml, XmlElement } from '@rgrove/parse-xml';
import svgpath from 'svgpath';
import type { Point } from '$src/core/section/section';
import { fromInches, fromMillimetres } from '$src/core/units';
import { cubicPoints, quadraticPoints } from './curves';
import {
  type DrawnLine,
  drawingOf,
  LARGEST_DRAWING,
  MOST_PIECES,
  passedOver,
  type ReadDrawing,
  refuse,
  tooLarge,
  tooMany,
} from './drawing';
import { FINE_CUT } from './tolerance';

/** Elements within elements; a drawing has ten. */
const DEEPEST = 100;

/** Characters of all transforms an element stands under; a drawing has tens. */
const LONGEST_TRANSFORM = 2000;
/** Characters of one path; more are points beyond number. */
const LONGEST_PATH = 100_000;

/**
 * Reads the lines of an SVG drawing. The file is only taken apart into its elements: nothing in it is run, shown or
 * fetched, and entities of its own are refused.
 */
export function readSvg(text: string): ReadDrawing {
  if (text.length > LARGEST_DRAWING) return tooLarge(text.length);
  let root: XmlElement | null;
  try {
    root = parseXml(text.replace(/^\uFEFF/, '')).root;
  } catch (error) {
    const [where] = (error instanceof Error ? error.message : String(error)).split('\n');
    return refuse(
      `The file is not readable as SVG: ${where!.slice(0, 200)}`,
      'Save the drawing as plain SVG, and open it again.',
    );
  }
  if (!root || kindOf(root) !== 'svg')
    return refuse('The file holds no SVG drawing.', 'Choose an SVG or a DXF file.');
  const unit = unitOf(root.attributes);
  // A drawing that says no scale is taken in millimetres until somebody tells its true length.
  const stray = FINE_CUT / (unit ?? fromMillimetres(1));
  const reading: Reading = { lines: [], passed: new Map(), stray };
  if (!readElement(root, { transform: '', layer: '', depth: 0 }, reading))
    return refuse(
      'The file is nested deeper than any drawing.',
      'Save the drawing as plain SVG, and open it again.',
    );
  if (reading.lines.length > MOST_PIECES) return tooMany(reading.lines.length);
  return drawingOf(reading.lines, unit, passedOver(reading.passed));
}

type Attributes = Readonly<Record<string, string>>;

/** Where an element stands. */
interface Level {
  /** Transforms from its frame to the drawing's. */
  readonly transform: string;
  readonly layer: string;
  readonly depth: number;
}

/** What has been read so far. */
interface Reading {
  readonly lines: DrawnLine[];
  readonly passed: Map<string, number>;
  /** Most that the chords of a curve stray from it [units of the drawing]. */
  readonly stray: number;
}

const DRAWN = new Set(['path', 'polyline', 'polygon', 'line', 'rect']);
const UNSEEN = new Set([
  'defs',
  'symbol',
  'clippath',
  'mask',
  'marker',
  'pattern',
  'metadata',
  'style',
  'script',
  'title',
  'desc',
]);
const NAMED = new Set(['text', 'image', 'use', 'circle', 'ellipse', 'foreignobject']);

const kindOf = ({ name }: XmlElement): string => (name.split(':').at(-1) ?? name).toLowerCase();

const isUnseen = (kind: string, { style, display }: Attributes): boolean =>
  UNSEEN.has(kind) || display === 'none' || /display\s*:\s*none/.test(style ?? '');

/** Reads an element and all within; false when it is nested too deep. */
function readElement(element: XmlElement, above: Level, reading: Reading): boolean {
  const kind = kindOf(element);
  const { attributes } = element;
  if (isUnseen(kind, attributes)) return true;
  if (above.depth > DEEPEST) return false;
  const level = {
    transform: `${above.transform} ${attributes['transform'] ?? ''}`.trim(),
    layer: kind === 'g' ? labelOf(attributes) || above.layer : above.layer,
    depth: above.depth + 1,
  };
  if (level.transform.length > LONGEST_TRANSFORM) {
    pass(reading, `${kind} with a transform too long`);
    return true;
  }
  if (DRAWN.has(kind)) draw(kind, attributes, level, reading);
  else if (NAMED.has(kind)) pass(reading, kind);
  return element.children.every(
    (child) => !(child instanceof XmlElement) || readElement(child, level, reading),
  );
}

const pass = ({ passed }: Reading, what: string): void => {
  passed.set(what, (passed.get(what) ?? 0) + 1);
};

function draw(kind: string, attributes: Attributes, { transform, layer }: Level, reading: Reading): void {
  const pieces = piecesOf(kind, attributes, transform, reading.stray);
  if (pieces === null) pass(reading, `${kind} that cannot be read`);
  const name = labelOf(attributes) || `${kind} ${reading.lines.length + 1}`;
  pieces?.forEach((piece, index) => {
    reading.lines.push({
      ...piece,
      layer,
      name: pieces.length > 1 ? `${name}, part ${index + 1}` : name,
    });
  });
}

/** The name a person gave: a label of whatever program drew it, else the id. */
function labelOf(attributes: Attributes): string {
  const label = Object.entries(attributes).find(([name]) => name.split(':').at(-1) === 'label')?.[1];
  return (label ?? attributes['id'] ?? '').slice(0, 80);
}

/** Metres of one unit of the drawing, when width and viewBox say so. */
function unitOf(attributes: Attributes): number | null {
  const found = /^\s*([\d.]+)\s*(mm|cm|in)\s*$/.exec(attributes['width'] ?? '');
  const box = (attributes['viewBox'] ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (!found || !(box.length === 4 && box[2]! > 0)) return null;
  const width = Number(found[1]);
  const metres = { mm: fromMillimetres(width), cm: fromMillimetres(width * 10), in: fromInches(width) }[
    found[2]!
  ]!;
  return metres / box[2]!;
}

type Piece = Pick<DrawnLine, 'points' | 'isClosed'>;

function piecesOf(kind: string, attributes: Attributes, transform: string, stray: number): Piece[] | null {
  const path = pathOf(kind, attributes);
  if (path === '' || path.length > LONGEST_PATH) return null;
  try {
    return flattened(path, transform, stray);
  } catch {
    return null;
  }
}

/** Every drawn element as the data of a path; '' when it has none. */
function pathOf(kind: string, attributes: Attributes): string {
  const number = (name: string): number => Number.parseFloat(attributes[name] ?? '0') || 0;
  switch (kind) {
    case 'path':
      return attributes['d'] ?? '';
    case 'polyline':
      return attributes['points'] ? `M${attributes['points']}` : '';
    case 'polygon':
      return attributes['points'] ? `M${attributes['points']}Z` : '';
    case 'line':
      return `M${number('x1')} ${number('y1')}L${number('x2')} ${number('y2')}`;
    default:
      return `M${number('x')} ${number('y')}h${number('width')}v${number('height')}h${-number('width')}Z`;
  }
}

/** The path's pieces with curves as chords that stray by `stray` at most, y turned up. Throws when the data cannot be read. */
function flattened(data: string, transform: string, stray: number): Piece[] {
  const path = svgpath(data);
  const { err } = path as unknown as { readonly err: string };
  if (err) throw new Error(err);
  const pieces: { points: Point[]; isClosed: boolean }[] = [];
  path
    .transform(transform)
    .abs()
    .unarc()
    .unshort()
    .iterate((segment, _index, x, y) => {
      const from = { x, y: -y };
      const values = segment.slice(1) as number[];
      const at = (index: number): Point => ({ x: values[index]!, y: -values[index + 1]! });
      const points = pieces.at(-1)?.points;
      if (segment[0] === 'M') pieces.push({ points: [at(0)], isClosed: false });
      else if (segment[0] === 'L') points?.push(at(0));
      else if (segment[0] === 'H') points?.push({ x: values[0]!, y: -y });
      else if (segment[0] === 'V') points?.push({ x, y: -values[0]! });
      else if (segment[0] === 'C') points?.push(...cubicPoints(from, at(0), at(2), at(4), stray));
      else if (segment[0] === 'Q') points?.push(...quadraticPoints(from, at(0), at(2), stray));
      else if (pieces.length > 0) pieces.at(-1)!.isClosed = true;
    });
  return pieces.filter(
    ({ points }) => points.length > 1 && points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)),
  );
}
