import { type Box, meet } from '$src/report/drawing/box';
import { deepestPoints } from '$src/report/study/deepestPoints';
import { axisValue, placeOf } from '$src/report/study/grid';
import type { MapAnswer } from '$src/report/study/mapAnswer';
import type { Region } from '$src/report/study/region';
import { textWidth } from '../charts/labelRoom';
import type { MapPlot } from './mapPlot';

/** The name of a region, set where the region has room [px]: middle of the plate, and baseline of its first line. */
export interface MapPlate {
  readonly title: string;
  readonly note: string;
  readonly wide: number;
  readonly x: number;
  readonly y: number;
}

interface Named {
  readonly title: string;
  readonly regions: readonly Region[];
  /** Of these only points whose feeder is short, or only the others. */
  readonly isShort?: boolean;
}

const NAMED: readonly Named[] = [
  { title: 'sound', regions: ['sound'], isShort: false },
  { title: 'feeder short', regions: ['sound'], isShort: true },
  { title: 'folds film', regions: ['folds film'] },
  { title: 'laps', regions: ['laps'] },
  { title: 'misruns', regions: ['misrun'] },
  { title: 'folds film and laps', regions: ['folds film and laps'] },
  { title: 'folds film, spills metal', regions: ['folds film and spills'] },
  { title: 'folds film, laps, spills metal', regions: ['folds film, laps and spills'] },
  { title: 'near a limit', regions: ['near the limit'] },
  { title: 'gas held', regions: ['gas held'] },
  { title: 'not filled', regions: ['not filled'] },
  { title: 'spills metal', regions: ['spills metal'] },
  { title: 'in the die at ladling', regions: ['in the die while ladling'] },
  { title: 'past the machine', regions: ['outside the machine'] },
  { title: 'no such pour', regions: ['no such pour', 'not computed'] },
];
const NOTES: Readonly<Record<string, string>> = {
  'feeder short': 'the die fills quietly',
  misruns: 'freezes before it is full',
  'gas held': 'shut in before the die is full',
  laps: 'cold fronts do not join',
};
/** A region of a few points gets no plate: its hatch would vanish under it. */
const LEAST_SHARE = 0.03;
/** Below this width of paper the notes are left out [px]. */
const ROOM_FOR_NOTES = 520;
const [ABOVE, BELOW, BELOW_NOTE] = [14, 9, 24];
const GAP = 3;

const boxOf = ({ x, y, wide, note }: MapPlate): Box => ({
  left: x - wide / 2 - GAP,
  right: x + wide / 2 + GAP,
  top: y - ABOVE - GAP,
  bottom: y + (note ? BELOW_NOTE : BELOW) + GAP,
});

/** A plate must lie on what it names at least by this share of the points under it. */
const OWN_SHARE = 0.5;

/**
 * A plate for each region that has room for one, in its deepest place that is clear of `taken` and of the plates
 * before it; without its note where that is too wide. A plate that finds no such place is left out: it would cover
 * what it names, or name another.
 */
export function mapPlates(
  answer: MapAnswer,
  plot: MapPlot,
  width: number,
  taken: readonly Box[],
): readonly MapPlate[] {
  const placed: MapPlate[] = [];
  const boxes = [...taken];
  for (const { title, regions, isShort } of NAMED) {
    const isMeant = (point: number): boolean =>
      regions.includes(answer.regions[point]!) &&
      (isShort === undefined || isShort === (answer.shortages[point] !== null));
    const points = deepestPoints(answer, isMeant);
    if (points.length <= LEAST_SHARE * answer.grid.count) continue;
    const cause = title === 'folds film' && answer.mainFold ? `mostly ${answer.mainFold}` : '';
    const whole = width < ROOM_FOR_NOTES ? '' : (NOTES[title] ?? cause);
    const isGood = (plate: MapPlate): boolean =>
      boxes.every((box) => !meet(box, boxOf(plate))) &&
      leavesSound(answer, pointsUnder(answer, plot, plate), isMeant, regions.includes('sound'));
    const clear = [...new Set([whole, ''])]
      .flatMap((note) => points.map((point) => plateAt(answer, plot, point, worded(title, note))))
      .find(isGood);
    if (!clear) continue;
    placed.push(clear);
    boxes.push(boxOf(clear));
  }
  return placed;
}

const worded = (title: string, note: string) => ({
  title,
  note,
  wide: Math.max(textWidth(title) * 1.15, textWidth(note)) + 16,
});

/** The plate lies on its own points for the most part, and on none other that is sound: that is what is looked for. */
function leavesSound(
  { regions, shortages }: MapAnswer,
  under: readonly number[],
  isMeant: (point: number) => boolean,
  isSound: boolean,
): boolean {
  const mine = under.filter(isMeant).length;
  const isWanted = (point: number): boolean =>
    regions[point] === 'sound' && (!isSound || shortages[point] === null);
  return (
    mine >= OWN_SHARE * Math.max(1, under.length) &&
    under.every((point) => isMeant(point) || !isWanted(point))
  );
}

/** The points under a plate, by number. */
function pointsUnder({ grid }: MapAnswer, plot: MapPlot, plate: MapPlate): number[] {
  const { left, right, top, bottom } = boxOf(plate);
  return Array.from({ length: grid.count }, (_, point) => point).filter((point) => {
    const [column, row] = placeOf(grid, point);
    const x = plot.x(axisValue(grid.axes[0]!, column));
    const y = plot.y(axisValue(grid.axes[1]!, row));
    return x >= left && x <= right && y >= top && y <= bottom;
  });
}

/** The plate over a point, moved in from the rim of the map where it would stand out. */
function plateAt(
  { grid }: MapAnswer,
  plot: MapPlot,
  point: number,
  plate: Pick<MapPlate, 'title' | 'note' | 'wide'>,
): MapPlate {
  const [column, row] = placeOf(grid, point);
  const x = plot.x(axisValue(grid.axes[0]!, column));
  const y = plot.y(axisValue(grid.axes[1]!, row)) + 4;
  const half = plate.wide / 2 + 2;
  return {
    ...plate,
    x: Math.min(plot.right - half, Math.max(plot.left + half, x)),
    y: Math.min(plot.bottom - BELOW_NOTE - 4, Math.max(plot.top + ABOVE + 4, y)),
  };
}
