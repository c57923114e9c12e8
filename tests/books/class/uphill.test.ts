import { describe, expect, it } from 'vitest';
import { guessesHiding } from '$src/cells/guessHides';
import { basinCapacity } from '$src/core/level/basinCapacity';
import { fillLevelFromVolume } from '$src/core/level/fillLevel';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { CLOSE } from '$src/report/guess/choices';
import { uphill } from '../sources/class/uphill';
import { answer, asksBeforeItShows, critical, firstFlow, peak, recordOf } from './claims';

asksBeforeItShows(uphill);

describe('uphill first', () => {
  it('comes in downhill from the pit, uphill from the flush basin', () => {
    expect(answer(uphill, 'guess-level')?.key).toBe('downhill');
    expect(answer(uphill, 'guess-uphill')?.key).toBe('uphill');
  });

  it('makes little odds to the pit where the machine starts', () => {
    const [level, steep] = [recordOf(uphill, 'level-pit'), recordOf(uphill, 'uphill-pit')];
    expect(Math.abs(firstFlow(level) - firstFlow(steep))).toBeLessThan(3);
    expect(answer(uphill, 'guess-mixed')?.key).toBe(CLOSE);
    for (const record of [level, steep]) expect(peak(record)).toBeGreaterThan(1.3 * critical(record));
  });

  it.each([
    [20, 'angle'],
    [10, 'already in the die'],
  ])('started at %i° the flush basin has metal %s', (start, kind) => {
    const cells = uphill.cells.map((cell) =>
      cell.id === 'uphill' && cell.kind === 'tilt'
        ? { ...cell, tilt: { ...cell.tilt, start: fromDegrees(start) } }
        : cell,
    );
    const book = { ...uphill, title: `${uphill.title}, ${start}`, cells };
    expect(recordOf(book, 'uphill-flush').figures.firstFlow.kind).toBe(kind);
  });
});

describe('the guess of the teacher’s own', () => {
  const [level, steep] = [recordOf(uphill, 'level-pit'), recordOf(uphill, 'uphill-pit')];

  it('says whose answer it is, and hides the note that explains until it is given', () => {
    expect(answer(uphill, 'guess-why')?.by).toBe('teacher');
    const note = uphill.cells.find(({ id }) => id === 'what-it-means')!;
    expect(guessesHiding(uphill, note).map(({ id }) => id)).toEqual(['guess-why']);
    const cells = uphill.cells.map((cell) => (cell.kind === 'guess' ? { ...cell, given: true } : cell));
    expect(guessesHiding({ ...uphill, cells }, note)).toEqual([]);
  });

  it('is right: the pit holds more uphill, its metal lies further under the sill, and passes it downhill', () => {
    const { section, volume } = level.plan;
    expect(basinCapacity(section, fromDegrees(30))).toBeGreaterThan(1.1 * basinCapacity(section, 0));
    const fromLip = (inclination: number) => fillLevelFromVolume(section, inclination, volume)!;
    expect(fromLip(fromDegrees(30))).toBeLessThan(fromLip(0) - fromMillimetres(5));
    for (const record of [level, steep]) expect(firstFlow(record)).toBeLessThan(0);
  });
});

describe('the answers in docs/teaching.md', () => {
  it.each([
    ['level-pit', -10],
    ['uphill-flush', 19],
  ])('metal of %s comes in near %i°', (id, degrees) => {
    expect(Math.abs(firstFlow(recordOf(uphill, id)) - degrees)).toBeLessThan(1);
  });
});
