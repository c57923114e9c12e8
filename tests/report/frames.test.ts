import { describe, expect, it } from 'vitest';
import { filmMoments } from '$src/report/filmMoments';
import { depthBehindFront, pictureAt } from '$src/report/frames';
import { inventedFigures, inventedRecord } from './inventedRecord';

const record = inventedRecord();

describe('picture between frames', () => {
  it('is a kept frame at its own time', () => {
    const { time, level, inclination } = record.frames;
    const picture = pictureAt(record, time[20]!);
    expect(picture.inclination).toBe(inclination[20]);
    expect(picture.levelOf(3)).toBe(level.data[20 * level.stride[0] + 3]);
  });

  it('is straight between two frames', () => {
    const { time, level } = record.frames;
    const middle = pictureAt(record, (time[20]! + time[21]!) / 2);
    const [a, b] = [20, 21].map((frame) => level.data[frame * level.stride[0] + 3]!);
    expect(middle.levelOf(3)).toBeCloseTo((a! + b!) / 2, 9);
  });

  it('shows the nearer frame where a cell is wet in one only, and dry where both are', () => {
    const { time, level } = record.frames;
    const cell = 40;
    const wetFrom = Array.from(time).findIndex(
      (_, frame) => !Number.isNaN(level.data[frame * level.stride[0] + cell]!),
    );
    const between = (share: number) => time[wetFrom - 1]! + (time[wetFrom]! - time[wetFrom - 1]!) * share;
    expect(pictureAt(record, between(0.2)).levelOf(cell)).toBeNaN();
    expect(pictureAt(record, between(0.8)).levelOf(cell)).toBe(level.data[wetFrom * level.stride[0] + cell]);
    expect(pictureAt(record, 0).levelOf(69)).toBeNaN();
  });

  it('leaves a film too thin to draw out', () => {
    const { depth } = record.frames;
    const thin = { ...depth, data: depth.data.map((value) => (value > 0 ? 1e-4 : 0)) };
    const filmed = inventedRecord({ frames: { ...record.frames, depth: thin } });
    expect(pictureAt(record, 3).levelOf(3)).not.toBeNaN();
    expect(pictureAt(filmed, 3).levelOf(3)).toBeNaN();
  });

  it('holds the last frame afterwards', () => {
    expect(pictureAt(record, 99).inclination).toBe(record.frames.inclination.at(-1));
  });

  it('knows the depth behind the front only while the front runs', () => {
    expect(depthBehindFront(record, 2)).toBe(0.012);
    expect(depthBehindFront(record, 8)).toBeNull();
  });
});

describe('film strip', () => {
  it('tells the pour in four moments in order', () => {
    const moments = filmMoments(record);
    expect(moments).toHaveLength(4);
    expect(moments[2]).toBe(3.5);
    expect(moments[3]).toBe(5.6);
    expect(moments).toEqual([...moments].sort((a, b) => a - b));
  });

  it('still has four when nothing came in', () => {
    const dry = inventedRecord({
      figures: { ...inventedFigures, arrivalTime: null, filled90Time: null },
      series: { ...record.series, front: record.series.front.map(() => -0.01) },
    });
    expect(filmMoments(dry)).toEqual([2.25, 4.5, 6.75, 9]);
  });
});
