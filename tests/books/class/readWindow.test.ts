import { describe, expect, it } from 'vitest';
import { fromDegrees } from '$src/core/units';
import { speedCall } from '$src/report/speedCall';
import { planAt } from '$src/report/study/planAt';
import { pointResult } from '$src/report/study/pointFigures';
import { foldsFilm, isCold, type Region, regionOf } from '$src/report/study/region';
import { computed } from '../computed';
import { planOf } from '../planOf';
import { readWindow } from '../sources/class/readWindow';
import { answer, asksBeforeItShows, recordOf } from './claims';

asksBeforeItShows(readWindow);

describe('reading a pour window', () => {
  it('folds in 1.5 seconds, stays unfilled in 30, fills warm in 10', () => {
    expect(answer(readWindow, 'guess-quick')?.key).toBe('over');
    expect(answer(readWindow, 'guess-slow')?.key).toBe('not filled');
    expect(recordOf(readWindow, 'slow').figures.lap?.kind).toBe('misrun');
    expect(answer(readWindow, 'guess-middle')?.key).toBe('warm');
    expect(speedCall(recordOf(readWindow, 'middle'))).toBe('under');
  });

  it.each([
    ['1.5', 'in the hatch', foldsFilm],
    ['10', 'on blank paper', (region: Region) => region === 'sound'],
    ['30', 'among the level lines', isCold],
  ])('shows the pour of %s seconds %s on its own map, made on its own mesh', (seconds, _, isThere) => {
    const study = readWindow.cells.find((cell) => cell.kind === 'study')!;
    if (study.kind !== 'study') throw new Error('No study.');
    const base = planOf(readWindow, 'middle', study.study.meshCells);
    const at = planAt(base, { 'tilt.time': Number(seconds), 'tilt.start': fromDegrees(30) });
    if ('refused' in at) throw new Error('refused');
    const region = regionOf(pointResult(computed(at.plan)));
    expect(isThere(region), `it is ${region}`).toBe(true);
  });

  it('answers alike on a mesh twice as fine', () => {
    const finer = (id: string) => {
      const at = planAt(planOf(readWindow, id, 200), {});
      if ('refused' in at) throw new Error('refused');
      return computed(at.plan);
    };
    expect(speedCall(finer('quick'))).toBe('over');
    expect(finer('slow').figures.lap?.kind).toBe('misrun');
    expect(finer('middle').figures.filledTime).not.toBeNull();
  });

  it('turns for as long as each pour is called', () => {
    for (const [id, seconds] of [
      ['quick', 1.5],
      ['middle', 10],
      ['slow', 30],
    ] as const) {
      const { series } = recordOf(readWindow, id);
      const index = series.inclination.findIndex((angle) => angle <= fromDegrees(-89.9));
      expect(Math.abs(series.time[index]! - seconds)).toBeLessThan(0.15);
    }
  });
});
