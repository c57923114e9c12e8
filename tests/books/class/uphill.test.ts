import { describe, expect, it } from 'vitest';
import { fromDegrees } from '$src/core/units';
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

describe('the answers in docs/teaching.md', () => {
  it.each([
    ['level-pit', -10],
    ['uphill-flush', 19],
  ])('metal of %s comes in near %i°', (id, degrees) => {
    expect(Math.abs(firstFlow(recordOf(uphill, id)) - degrees)).toBeLessThan(1);
  });
});
