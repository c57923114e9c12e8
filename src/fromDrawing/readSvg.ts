import { SaxesParser, type SaxesTagPlain } from 'saxes';
import svgpath from 'svgpath';
import type { Point } from '$src/core/section/section';
import { fromInches, fromMillimetres } from '$src/core/units';
import { cubicPoints, quadraticPoints } from './curves';
import { type DrawnLine, drawingOf, LARGEST_DRAWING, passedOver, type ReadDrawing, refuse } from './drawing';

/**
 * Reads the lines of an SVG drawing. The file is only taken apart into its elements: nothing in it is run, shown or
 * fetched, and its entities are not expanded.
 */
export function readSvg(text: string): ReadDrawing {
  if (text.length > LARGEST_DRAWING) return tooLarge(text.length);
  const reading = new Reading();
  const parser = new SaxesParser();
  parser.on('opentag', (tag) => reading.open(tag));
  parser.on('closetag', () => reading.close());
  parser.on('error', (error) => {
    throw error;
  });
  try {
    parser.write(text.replace(/^\uFEFF/, '')).close();
  } catch (error) {
    const where = error instanceof Error ? error.message : String(error);
    return refuse(
      `The file is not readable as SVG: ${where}`,
      'Save the drawing as plain SVG, and open it again.',
    );
  }
  if (!reading.isSvg) return refuse('The file holds no SVG drawing.', 'Choose an SVG or a DXF file.');
  return drawingOf(reading.lines, reading.unit, passedOver(reading.passed));
}

export const tooLarge = (length: number): ReadDrawing =>
  refuse(
    `The file has ${length} characters; a drawing has at most ${LARGEST_DRAWING}.`,
    'Leave out what does not belong to the section.',
  );

type Attributes = Readonly<Record<string, string>>;

interface Level {
  /** Transforms from this element's frame to the drawing's. */
  readonly transform: string;
  readonly layer: string;
  /** Inside a definition nothing is drawn. */
  readonly isHidden: boolean;
}

const DRAWN = new Set(['path', 'polyline', 'polygon', 'line', 'rect']);
const GROUPS = new Set(['svg', 'g', 'a']);
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

/** What has been read so far; the levels are the elements that are open. */
class Reading {
  readonly lines: DrawnLine[] = [];
  readonly passed = new Map<string, number>();
  unit: number | null = null;
  isSvg = false;
  readonly #levels: Level[] = [];

  open({ name, attributes }: SaxesTagPlain): void {
    const kind = (name.split(':').at(-1) ?? name).toLowerCase();
    const above = this.#levels.at(-1) ?? { transform: '', layer: '', isHidden: false };
    if (kind === 'svg' && !this.isSvg) {
      this.isSvg = true;
      this.unit = unitOf(attributes);
    }
    const level = this.#levelOf(kind, attributes, above);
    this.#levels.push(level);
    if (level.isHidden) return;
    if (DRAWN.has(kind)) this.#draw(kind, attributes, level);
    else if (NAMED.has(kind)) this.passed.set(kind, (this.passed.get(kind) ?? 0) + 1);
  }

  close(): void {
    this.#levels.pop();
  }

  #levelOf(kind: string, attributes: Attributes, above: Level): Level {
    const own = attributes['transform'] ?? '';
    const isHidden =
      above.isHidden ||
      UNSEEN.has(kind) ||
      /display\s*:\s*none/.test(attributes['style'] ?? '') ||
      attributes['display'] === 'none';
    const layer = kind === 'g' ? labelOf(attributes) || above.layer : above.layer;
    return {
      transform: `${above.transform} ${own}`.trim(),
      layer: GROUPS.has(kind) ? layer : above.layer,
      isHidden,
    };
  }

  #draw(kind: string, attributes: Attributes, { transform, layer }: Level): void {
    const pieces = piecesOf(kind, attributes, transform);
    if (pieces === null) {
      this.passed.set(
        `${kind} that cannot be read`,
        (this.passed.get(`${kind} that cannot be read`) ?? 0) + 1,
      );
      return;
    }
    const name = labelOf(attributes) || `${kind} ${this.lines.length + 1}`;
    pieces.forEach((piece, index) => {
      this.lines.push({ ...piece, layer, name: pieces.length > 1 ? `${name}, part ${index + 1}` : name });
    });
  }
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

function piecesOf(kind: string, attributes: Attributes, transform: string): Piece[] | null {
  const path = pathOf(kind, attributes);
  if (path === '') return null;
  try {
    return flattened(path, transform);
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

/** The path's pieces with curves as chords, y turned up. Throws when the data cannot be read. */
function flattened(data: string, transform: string): Piece[] {
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
      else if (segment[0] === 'C') points?.push(...cubicPoints(from, at(0), at(2), at(4)));
      else if (segment[0] === 'Q') points?.push(...quadraticPoints(from, at(0), at(2)));
      else if (pieces.length > 0) pieces.at(-1)!.isClosed = true;
    });
  return pieces.filter(
    ({ points }) => points.length > 1 && points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)),
  );
}
