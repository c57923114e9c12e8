type Group = readonly [code: number, value: string | number];

/** Groups of a DXF file as its text. */
export const groups = (...list: readonly Group[]): string =>
  list.map(([code, value]) => `${code}\n${value}\n`).join('');

const section = (name: string, inside: string): string =>
  groups([0, 'SECTION'], [2, name]) + inside + groups([0, 'ENDSEC']);

/** A whole file of these entities and blocks, in millimetres. */
export const dxfFile = (entities: string, blocks = ''): string =>
  section('HEADER', groups([9, '$INSUNITS'], [70, 4])) +
  section('BLOCKS', blocks) +
  section('ENTITIES', entities) +
  groups([0, 'EOF']);

/** A block with its base point. */
export const blockText = (name: string, inside: string, base: readonly [number, number] = [0, 0]): string =>
  groups([0, 'BLOCK'], [2, name], [10, base[0]], [20, base[1]]) + inside + groups([0, 'ENDBLK']);

export const insertText = (name: string, ...more: readonly Group[]): string =>
  groups([0, 'INSERT'], [8, 'die'], [2, name], [10, 0], [20, 0], ...more);

export const lineText = (layer: string, ...[x, y, toX, toY]: readonly [number, number, number, number]) =>
  groups([0, 'LINE'], [8, layer], [10, x], [20, y], [11, toX], [21, toY]);

export interface SplineText {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly controls: readonly (readonly [number, number])[];
  readonly weights?: readonly number[];
  readonly flags?: number;
}

export const splineText = ({ degree, knots, controls, weights = [], flags = 8 }: SplineText): string =>
  groups(
    [0, 'SPLINE'],
    [8, 'die'],
    [70, flags],
    [71, degree],
    ...knots.map((knot) => [40, knot] as const),
    ...weights.map((weight) => [41, weight] as const),
    ...controls.flatMap(([x, y]) => [[10, x] as const, [20, y] as const, [30, 0] as const]),
  );

/** A spline that says only what it goes through. */
export const fitText = (
  points: readonly (readonly [number, number])[],
  flags = 0,
  ...more: Group[]
): string =>
  groups(
    [0, 'SPLINE'],
    [8, 'die'],
    [70, flags],
    [71, 3],
    ...more,
    ...points.flatMap(([x, y]) => [[11, x] as const, [21, y] as const]),
  );
