import type { Issue } from '$src/core/issue';
import type { Point } from '$src/core/section/section';

/** One line of a drawing: straight between its points, curves already flattened. */
export interface DrawnLine {
  /** Layer or group it is in; '' when the file has none. */
  readonly layer: string;
  /** What the file calls it, or its number. */
  readonly name: string;
  /** In units of the drawing, y up. */
  readonly points: readonly Point[];
  readonly isClosed: boolean;
}

/** What was read of a drawing file. */
export interface Drawing {
  readonly lines: readonly DrawnLine[];
  /** Metres of one unit of the drawing, where the file says so. */
  readonly unit: number | null;
  /** What was passed over, and why. */
  readonly issues: readonly Issue[];
}

export type ReadDrawing = Drawing | { readonly refused: readonly Issue[] };

/** Characters in a file; a section is a thousandth of this. */
export const LARGEST_DRAWING = 5_000_000;
/** Lines, arcs and other pieces in a file; a section has some tens. More would take minutes to join. */
export const MOST_PIECES = 5000;
/** Points of one line, curves flattened; a floor has some tens. */
export const MOST_POINTS = 5000;
/** Points of all lines together, curves flattened: five thousand quarter circles cut coarsely. More would take seconds to work out. */
export const MOST_POINTS_IN_ALL = 100_000;
/** Lines that are kept; a drawing with more is not one of a section. */
export const MOST_LINES = 500;

/** What to do about a drawing with too much in it. */
export const LEAVE_OUT = 'Leave out what does not belong to the section.';

export const refuse = (message: string, remedy: string): ReadDrawing => ({
  refused: [{ path: 'file', message, remedy }],
});

export const tooLarge = (length: number): ReadDrawing =>
  refuse(`The file has ${length} characters; a drawing has at most ${LARGEST_DRAWING}.`, LEAVE_OUT);

export const tooMany = (count: number): ReadDrawing =>
  refuse(`The drawing has ${count} pieces; one of a section has at most ${MOST_PIECES}.`, LEAVE_OUT);

export const tooManyPoints = (): ReadDrawing =>
  refuse(
    `The lines of the drawing have more than ${MOST_POINTS_IN_ALL} points, curves cut into straight pieces.`,
    LEAVE_OUT,
  );

/** What the drawing amounts to once read: refused when nothing in it can be a floor or a roof. */
export function drawingOf(
  lines: readonly DrawnLine[],
  unit: number | null,
  issues: readonly Issue[],
): ReadDrawing {
  const usable = lines.filter(({ points }) => points.length > 1 && points.length <= MOST_POINTS);
  const endless = lines.filter(({ points }) => points.length > MOST_POINTS).length;
  if (endless > 0) return drawingOf(usable, unit, [...issues, tooFine(endless)]);
  if (usable.length === 0)
    return refuse(
      `The drawing has no line that could be a floor or a roof.${issues.map(({ message }) => ` ${message}`).join('')}`,
      'Draw floor and roof as paths or polylines, and save the drawing again.',
    );
  if (usable.length <= MOST_LINES) return { lines: usable, unit, issues };
  const message = `The drawing has ${usable.length} lines; the longest ${MOST_LINES} were kept.`;
  const longest = [...usable].sort((a, b) => spanOf(b) - spanOf(a)).slice(0, MOST_LINES);
  return {
    lines: longest,
    unit,
    issues: [...issues, { path: 'lines', message, remedy: 'Leave out what is not needed.' }],
  };
}

const tooFine = (count: number): Issue => ({
  path: 'lines',
  message: `Passed over, because they have more than ${MOST_POINTS} points: ${count} ${count === 1 ? 'line' : 'lines'}.`,
  remedy: 'Draw them with fewer points.',
});

const spanOf = ({ points }: DrawnLine): number => {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
};

/** "2 texts and 1 image were passed over": things of a file that are no lines. */
export function passedOver(counts: ReadonlyMap<string, number>): Issue[] {
  if (counts.size === 0) return [];
  const list = [...counts].map(([what, count]) => `${what} (${count})`).join(', ');
  const message = `Passed over, because they are no lines: ${list}.`;
  return [{ path: 'file', message, remedy: 'Turn what is needed of them into paths or polylines.' }];
}
