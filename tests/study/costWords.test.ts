import { describe, expect, it } from 'vitest';
import { costWords } from '$src/report/study/costWords';
import { gridOf } from '$src/report/study/grid';
import { POUR_WINDOW } from '$src/report/study/pourWindow';

const window = gridOf(POUR_WINDOW);
const small = gridOf({ axes: POUR_WINDOW.axes.map((axis) => ({ ...axis, points: 6 })) });
const curve = gridOf({ axes: [{ ...POUR_WINDOW.axes[0]!, points: 20 }] });
const unknown = () => null;

describe('what a study will cost', () => {
  it('is a first look, then edges, and never more than the grid', () => {
    expect(costWords({ grid: window, known: 0, poured: 0, lacking: 64, timeFor: unknown })).toBe(
      'It takes 64 pours for a first look, then those along the edges, 400 at most, and a few for the margins.',
    );
  });

  it('tells about how long where something tells', () => {
    const text = costWords({
      grid: window,
      known: 0,
      poured: 0,
      lacking: 64,
      timeFor: (pours) => pours * 0.4,
    });
    expect(text).toContain('64 pours for a first look (about 25 s)');
    expect(text).toContain('400 at most (about 3 min)');
    expect(costWords({ grid: curve, known: 0, poured: 0, lacking: 20, timeFor: () => 0.9 })).toBe(
      'It takes 20 pours (about a second), and a few for the margins.',
    );
  });

  it('does not take points that were refused for kept ones', () => {
    expect(costWords({ grid: small, known: 6, poured: 0, lacking: 30, timeFor: unknown })).toBe(
      'It takes 30 pours, and a few for the margins.',
    );
  });

  it('counts what is kept', () => {
    expect(costWords({ grid: window, known: 100, poured: 100, lacking: 12, timeFor: unknown })).toBe(
      'It takes 12 more pours along the edges, then those they lead to, 300 at most, and a few for the margins.',
    );
    expect(costWords({ grid: small, known: 35, poured: 35, lacking: 1, timeFor: unknown })).toBe(
      'It takes one more pour, and a few for the margins.',
    );
    expect(costWords({ grid: small, known: 36, poured: 36, lacking: 0, timeFor: unknown })).toMatch(
      /^All its points are known/,
    );
  });
});
