import { describe, expect, test } from 'vitest';
import { meet } from '$src/report/drawing/box';
import type { Spot } from '$src/ui/charts/chart';
import { isInside } from '$src/ui/charts/labelRoom';
import { lineNames, placesIn } from '$src/ui/charts/lineNames';
import { type RunLook, runLook } from '$src/ui/charts/runLook';

const plot = { left: 40, top: 22, right: 560, bottom: 204 };
const place = placesIn(plot, [], []);
const MARK = 13;

/** Curves that rise together, as near to each other as eight pours are. */
const pours = (names: readonly string[], apart = 0.05) =>
  names.map((name, index) => ({
    key: `p${index}`,
    name,
    look: runLook(index),
    shown: Array.from(
      { length: 61 },
      (_, step): Spot => [
        plot.left + ((plot.right - plot.left) * step) / 60,
        plot.bottom - (plot.bottom - plot.top) * (0.1 + 0.4 * (step / 60) + apart * index),
      ],
    ),
  }));
const level = (key: string) => ({ ...pours(['level fill'])[0]!, key, look: 'level' as RunLook });
const EIGHT = Array.from(
  { length: 8 },
  (_, index) => `Quick and steady from +30°, trial of the ${index + 1}th day`,
);

test('two pours have their names at their lines, and no key', () => {
  const { isKeyed, placed } = lineNames(pours(['Quick', 'Slow']), MARK, false, place);
  expect([isKeyed, placed.map(({ text }) => text)]).toEqual([false, ['Quick', 'Slow']]);
});

describe('of eight pours with long names', () => {
  const curves = [level('fill'), ...pours(EIGHT)];
  const { isKeyed, placed, tags, wanted } = lineNames(curves, MARK, false, place);

  test('each line bears a label, free of curves and of the others, and a key holds the names', () => {
    expect(isKeyed).toBe(true);
    expect(placed.map(({ key }) => key)).toEqual(curves.map(({ key }) => key));
    for (const label of placed) {
      expect([label.text, label.isFree]).toEqual([label.text, true]);
      expect(isInside(label.box, plot)).toBe(true);
    }
    placed.forEach((label, index) => {
      for (const other of placed.slice(index + 1)) expect(meet(label.box, other.box)).toBe(false);
    });
  });

  test('the labels are numbers where short names find no room, and none is given twice', () => {
    expect([...tags.values()].toSorted()).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', 'L']);
    expect(wanted.find(({ key }) => key === 'p2')!.text).toBe('3');
  });
});

test('short names stand at the lines where they find room, and whole ones in the key', () => {
  const names = ['hot', 'warm', 'cold'].map(
    (word) => `Quick and steady from +30°, the metal ${word} as it comes`,
  );
  const { isKeyed, placed, tags } = lineNames(pours(names, 0.2), MARK, false, (wanted) =>
    place(wanted).map((label) => ({ ...label, isFree: label.text.length < 20 })),
  );
  expect([isKeyed, tags.size, placed.map(({ text }) => text)]).toEqual([true, 0, ['hot', 'warm', 'cold']]);
});

test('on a phone several pours are numbered, and level fills by themselves; one pour has a key alone', () => {
  const several = lineNames([level('a'), level('b'), ...pours(['Quick', 'Slow'])], MARK, true, place);
  expect([...several.tags]).toEqual([
    ['p0', '1'],
    ['p1', '2'],
    ['a', 'L1'],
    ['b', 'L2'],
  ]);
  const one = lineNames([level('a'), ...pours(['Quick'])], MARK, true, place);
  expect([one.isKeyed, one.placed, one.tags.size]).toEqual([true, [], 0]);
});
