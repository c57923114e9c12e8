import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, meet } from '$src/report/drawing/box';
import { gridOf } from '$src/report/study/grid';
import type { MapAnswer } from '$src/report/study/mapAnswer';
import type { Region } from '$src/report/study/region';
import { type MapPlate, mapPlates } from '$src/ui/study/mapPlates';
import { mapPlot } from '$src/ui/study/mapPlot';
import { setPointBoxes } from '$src/ui/study/mapSetPoint';

const axes = [
  { setting: 'tilt.time', from: 0, to: 10, points: 20 },
  { setting: 'tilt.start', from: 0, to: 1, points: 20 },
] as const;
const grid = gridOf({ axes });
const plot = mapPlot(axes[0], axes[1], 600, 500);

/** Folds film left of `edge`, sound right of it, laps above `lid`. */
const answerOf = (edge: number, lid: number): MapAnswer => ({
  grid,
  regions: Array.from({ length: grid.count }, (_, point): Region => {
    if (Math.floor(point / 20) >= lid) return 'laps';
    return point % 20 < edge ? 'folds film' : 'sound';
  }),
  isComputed: Array.from({ length: grid.count }, () => true),
  shortages: Array.from({ length: grid.count }, () => null),
  mainFold: 'tongue',
});

const boxOf = ({ x, y, wide, note }: MapPlate): Box => ({
  left: x - wide / 2,
  right: x + wide / 2,
  top: y - 14,
  bottom: y + (note ? 24 : 9),
});

test('names of regions keep off each other and off the set point, wherever the edges run', () => {
  const places = fc.record({
    edge: fc.integer({ min: 0, max: 20 }),
    lid: fc.integer({ min: 1, max: 20 }),
    x: fc.integer({ min: 60, max: 580 }),
    y: fc.integer({ min: 40, max: 450 }),
  });
  fc.assert(
    fc.property(places, ({ edge, lid, x, y }) => {
      const taken = setPointBoxes({ x, y }, [], plot);
      const boxes = mapPlates(answerOf(edge, lid), plot, 600, taken).map(boxOf);
      for (const [index, box] of boxes.entries()) {
        expect(taken.some((other) => meet(box, other))).toBe(false);
        expect(boxes.slice(index + 1).some((other) => meet(box, other))).toBe(false);
        expect(box.left >= plot.left && box.right <= plot.right).toBe(true);
      }
    }),
    { seed: 4, numRuns: 60 },
  );
});

test('each large region has its name, and a sliver has none', () => {
  const titles = (edge: number, lid: number) =>
    mapPlates(answerOf(edge, lid), plot, 600, []).map(({ title }) => title);
  expect(titles(10, 16)).toEqual(['sound', 'folds film', 'laps']);
  expect(titles(0, 20)).toEqual(['sound']);
  expect(titles(20, 20)).toEqual(['folds film']);
});

test('the fold that most points have is told with the region, where the paper is wide', () => {
  const noteAt = (width: number) =>
    mapPlates(answerOf(10, 20), plot, width, []).find(({ title }) => title === 'folds film')!.note;
  expect(noteAt(600)).toBe('mostly tongue');
  expect(noteAt(390)).toBe('');
});

test('no other name covers what is sound, however narrow that strip is', () => {
  const strip = (at: number): MapAnswer => ({
    ...answerOf(0, 20),
    regions: Array.from(
      { length: grid.count },
      (_, point): Region => (point % 20 === at ? 'sound' : 'folds film'),
    ),
  });
  for (let at = 0; at < 20; at++) {
    const x = plot.x(axes[0].from + ((axes[0].to - axes[0].from) * at) / 19);
    for (const plate of mapPlates(strip(at), plot, 600, []).filter(({ title }) => title !== 'sound')) {
      const { left, right } = boxOf(plate);
      expect(left < x && x < right, `strip ${at} under "${plate.title}"`).toBe(false);
    }
  }
});

test('what fills quietly and is not fed has a name of its own, and the word sound stands where the feeder is enough', () => {
  const plain = answerOf(4, 20);
  const from = (column: number): MapAnswer => ({
    ...plain,
    shortages: plain.regions.map((region, point) =>
      region === 'sound' && point % 20 >= column ? 'the feeder is short of metal' : null,
    ),
  });
  const titles = (answer: MapAnswer) => mapPlates(answer, plot, 600, []).map(({ title }) => title);
  expect(titles(plain)).not.toContain('feeder short');
  // All of it short: nothing on the map is called sound.
  expect(titles(from(0))).toContain('feeder short');
  expect(titles(from(0))).not.toContain('sound');
  const both = mapPlates(from(12), plot, 600, []);
  const [sound, quiet] = ['sound', 'feeder short'].map(
    (title) => both.find((plate) => plate.title === title)!,
  );
  expect(sound!.x).toBeLessThan(plot.x((12 * 10) / 19));
  expect(quiet!.x).toBeGreaterThan(plot.x((12 * 10) / 19));
});

test('a region whose metal folds and spills is named after both', () => {
  const plain = answerOf(10, 20);
  const spilling: MapAnswer = {
    ...plain,
    regions: plain.regions.map(
      (region, point): Region =>
        region === 'folds film' && Math.floor(point / 20) >= 10 ? 'folds film and spills' : region,
    ),
  };
  const titles = mapPlates(spilling, plot, 600, []).map(({ title }) => title);
  expect(titles.toSorted()).toEqual(['folds film', 'folds film, spills metal', 'sound']);
});
