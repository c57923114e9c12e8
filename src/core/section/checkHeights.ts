import type { Issue } from '$src/core/issue';
import { pointName } from './checkLine';
import { checkPassage } from './checkPassage';
import { closedRoof } from './closedRoof';
import { lineAt, SAME_PLACE } from './lineAt';
import { millimetres as mm } from './millimetres';
import type { Point, Section } from './section';
import { SIZES } from './sizes';

/** Where the roof is not over the floor: one issue for each stretch, naming the point that does it. */
export function checkHeights(section: Section): Issue[] {
  const stretches = crossedStretches(section);
  if (stretches.length > 0) return stretches.map((stretch) => describe(section, stretch));
  return checkPassage(section);
}

interface Place {
  readonly x: number;
  readonly side: 'left' | 'right';
  readonly height: number;
}

/** Stretch from…to over which the height is less than a section may have; `worst` is where it is least. */
interface Stretch {
  from: number;
  to: number;
  worst: Place;
}

function crossedStretches(section: Section): Stretch[] {
  const places = placesAlong(section);
  const stretches: Stretch[] = [];
  let open: Stretch | null = null;
  places.forEach((place, i) => {
    const isLow = place.height < SIZES.leastHeight;
    if (isLow && !open) {
      open = { from: crossing(places[i - 1], place), to: place.x, worst: place };
      stretches.push(open);
    }
    if (!open) return;
    if (isLow && place.height < open.worst.height) open.worst = place;
    open.to = isLow ? place.x : crossing(place, places[i - 1]!);
    if (!isLow) open = null;
  });
  return stretches;
}

function placesAlong(section: Section): Place[] {
  const roof = closedRoof(section);
  const marks = [...new Set([...section.floor, ...roof].map((point) => point.x))].sort((a, b) => a - b);
  return marks.flatMap((x) =>
    (['left', 'right'] as const).map((side) => ({
      x,
      side,
      height: lineAt(roof, x, side) - lineAt(section.floor, x, side),
    })),
  );
}

/** Where the height passes zero between a place that is high enough and one that is not. */
function crossing(high: Place | undefined, low: Place): number {
  if (!high || high.x === low.x || low.height > 0) return low.x;
  return low.x + ((high.x - low.x) * low.height) / (low.height - high.height);
}

function describe(section: Section, { from, to, worst }: Stretch): Issue {
  const where = mm(from) === mm(to) ? `at ${mm(from)} mm` : `between ${mm(from)} and ${mm(to)} mm`;
  const amount = -worst.height;
  const roofIndex = pointAt(section.roof, worst.x, worst.side);
  if (roofIndex >= 0) {
    const name = pointName('roof', roofIndex);
    const verb = amount > SIZES.leastHeight ? `${mm(amount)} mm under the floor` : 'onto the floor';
    return {
      path: `roof.${roofIndex}.y`,
      message: `${name} puts the roof ${verb} ${where}.`,
      remedy: `Raise y of ${name} to more than ${mm(lineAt(section.floor, worst.x, worst.side))} mm${orTakeOut(section.roof, roofIndex, name)}.`,
      at: section.roof[roofIndex]!,
    };
  }
  const floorIndex = pointAt(section.floor, worst.x, worst.side);
  const name = pointName('floor', floorIndex);
  const verb = amount > SIZES.leastHeight ? `${mm(amount)} mm over the roof` : 'against the roof';
  return {
    path: `floor.${floorIndex}.y`,
    message: `${name} puts the floor ${verb} ${where}.`,
    remedy: `Lower y of ${name} to less than ${mm(lineAt(closedRoof(section), worst.x, worst.side))} mm${orTakeOut(section.floor, floorIndex, name)}.`,
    at: section.floor[floorIndex]!,
  };
}

/** The point of a line that gives it its height at x on that side; −1 when x lies between points. */
function pointAt(line: readonly Point[], x: number, side: 'left' | 'right'): number {
  const isHere = (point: Point) => Math.abs(point.x - x) <= SAME_PLACE;
  return side === 'left' ? line.findIndex(isHere) : line.findLastIndex(isHere);
}

const orTakeOut = (line: readonly Point[], index: number, name: string): string =>
  index > 0 && index < line.length - 1 ? `, or take ${name} out` : '';
