import type { Issue } from '$src/core/issue';
import { SAME_PLACE } from './lineAt';
import { millimetres as mm } from './millimetres';
import type { Point } from './section';
import { SIZES } from './sizes';

export type LineName = 'floor' | 'roof';

/** What is wrong with one line taken by itself: count of points, numbers, size, order along the axis. */
export function checkLine(line: readonly Point[], name: LineName): Issue[] {
  const count = checkCount(line, name);
  if (count.length > 0) return count;
  const broken = line.flatMap((point, i) => checkPoint(point, name, i));
  return broken.length > 0 ? broken : line.flatMap((_, i) => checkOrder(line, name, i));
}

/** What a point is called in sentences: F1 is the first of the floor, R1 the first of the roof. */
export const pointName = (name: LineName, index: number): string =>
  `${name === 'floor' ? 'F' : 'R'}${index + 1}`;

/** What to do about a place further off than any. */
export const WITHIN_SIZES = `Type a number from ${mm(-SIZES.most)} to ${mm(SIZES.most)} mm.`;

function checkCount(line: readonly Point[], name: LineName): Issue[] {
  if (line.length < 2) {
    const has = line.length === 0 ? 'no points' : 'one point only';
    return [
      {
        path: name,
        message: `The ${name} has ${has}.`,
        remedy: 'Give it at least two: one at the back wall, one at the die end.',
      },
    ];
  }
  if (line.length > SIZES.mostPoints) {
    return [
      {
        path: name,
        message: `The ${name} has ${line.length} points.`,
        remedy: `Draw it with ${SIZES.mostPoints} or fewer.`,
      },
    ];
  }
  return [];
}

function checkPoint(point: Point, name: LineName, index: number): Issue[] {
  return (['x', 'y'] as const)
    .filter((axis) => !(Math.abs(point[axis]) <= SIZES.most))
    .map((axis) => ({
      path: `${name}.${index}.${axis}`,
      message: Number.isFinite(point[axis])
        ? `${axis} of ${pointName(name, index)} is ${mm(point[axis])} mm, larger than any die here.`
        : `${axis} of ${pointName(name, index)} is not a number.`,
      remedy: WITHIN_SIZES,
    }));
}

function checkOrder(line: readonly Point[], name: LineName, index: number): Issue[] {
  const before = line[index - 1];
  const point = line[index]!;
  if (!before) return [];
  if (point.x < before.x - SAME_PLACE) return [behind(line, name, index)];
  return isSpike(line, index) ? [spike(line, name, index)] : [];
}

function behind(line: readonly Point[], name: LineName, index: number): Issue {
  const here = pointName(name, index);
  const point = line[index]!;
  const before = line[index - 1]!;
  return {
    path: `${name}.${index}.x`,
    message: `${here} lies ${mm(before.x - point.x)} mm behind ${pointName(name, index - 1)}; the ${name} may not turn back along the axis.`,
    remedy: `Set x of ${here} to ${mm(before.x)} mm or more, or take it out.`,
    at: point,
  };
}

/** A point of a vertical step that overshoots the step: the line would run out and back over itself. */
function isSpike(line: readonly Point[], index: number): boolean {
  const before = line[index - 1];
  const point = line[index]!;
  const after = line[index + 1];
  if (!before || !after || Math.abs(after.x - before.x) > SAME_PLACE) return false;
  return (point.y - before.y) * (after.y - point.y) < 0;
}

function spike(line: readonly Point[], name: LineName, index: number): Issue {
  const here = pointName(name, index);
  const ends = [line[index - 1]!.y, line[index + 1]!.y].sort((a, b) => a - b);
  return {
    path: `${name}.${index}.y`,
    message: `${here} makes the ${name} run out and back over itself at ${mm(line[index]!.x)} mm.`,
    remedy: `Set y of ${here} between ${mm(ends[0]!)} and ${mm(ends[1]!)} mm, or take it out.`,
    at: line[index]!,
  };
}
