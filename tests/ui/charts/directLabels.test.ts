import { describe, expect, test } from 'vitest';
import { type Box, meet } from '$src/report/drawing/box';
import { barWords } from '$src/ui/charts/barWords';
import type { Spot } from '$src/ui/charts/chart';
import { type LabelPlaced, placeDirectLabels } from '$src/ui/charts/directLabels';
import { boxAt, dense, hits, isInside, textWidth } from '$src/ui/charts/labelRoom';
import { labelsAtCursor } from '$src/ui/charts/labelsAtCursor';

const plot = { left: 40, top: 22, right: 520, bottom: 200 };
const MARK = 13;
const NAMES = ['Quick and steady', 'Staged', 'Slow at level', 'Front-led at half'];

const curve = (height: (share: number) => number): Spot[] =>
  Array.from(
    { length: 61 },
    (_, i): Spot => [
      plot.left + ((plot.right - plot.left) * i) / 60,
      plot.bottom - (plot.bottom - plot.top) * height(i / 60),
    ],
  );
const wanted = (curves: readonly Spot[][]) =>
  curves.map((points, i) => ({ key: `${i}`, text: NAMES[i]!, points, mark: MARK }));
const boxOf = ({ text, x, y }: LabelPlaced): Box => boxAt(x, y, textWidth(text) + MARK);

/** Four curves each, so close that a name does not fit between two of them. */
const CLOSE: Readonly<Record<string, Spot[][]>> = {
  'that rise together': [0, 1, 2, 3].map((i) => curve((share) => 0.15 + 0.5 * share + 0.03 * i)),
  'that cross': [0, 1, 2, 3].map((i) => curve((share) => 0.45 + 0.1 * Math.sin(4 * share + i))),
  'that lie low': [0, 1, 2, 3].map((i) => curve((share) => 0.03 + 0.04 * i + 0.02 * share)),
  'that lie along the top': [0, 1, 2, 3].map((i) => curve((share) => 0.97 - 0.04 * i - 0.02 * share)),
  'that climb steeply at the end': [0, 1, 2, 3].map((i) =>
    curve((share) => 0.1 + (0.7 + 0.03 * i) * share ** 6),
  ),
};

describe.each(Object.entries(CLOSE))('names of four close curves %s', (_, curves) => {
  const placed = placeDirectLabels(wanted(curves), plot);

  test('are all there, inside the plot', () => {
    expect(placed.map(({ text }) => text)).toEqual(NAMES);
    for (const label of placed) expect(isInside(boxOf(label), plot)).toBe(true);
    expect(placed.every(({ isFree }) => isFree)).toBe(true);
  });

  test('lie neither on each other nor on a curve', () => {
    placed.forEach((label, i) => {
      for (const other of placed.slice(i + 1)) expect(meet(boxOf(label), boxOf(other))).toBe(false);
      for (const points of curves) expect(hits(boxOf(label), dense(points))).toBe(0);
    });
  });

  test('are led to their own curve where they stand away from it, past no other name', () => {
    placed.forEach(({ leader }, i) => {
      if (!leader) return;
      const ends = dense(curves[i]!).map(([x, y]) => Math.hypot(x - leader.to[0], y - leader.to[1]));
      expect(Math.min(...ends)).toBeLessThan(1);
      const line = dense([leader.from, leader.to]);
      for (const [j, other] of placed.entries()) if (j !== i) expect(hits(boxOf(other), line)).toBe(0);
    });
  });
});

describe('a name', () => {
  test('of a curve by itself stands beside it, without a leader', () => {
    const [label] = placeDirectLabels(wanted([curve((share) => 0.2 + 0.4 * share)]), plot);
    expect(label!.leader).toBeNull();
  });

  test('keeps off what is taken and off ruled lines', () => {
    const level: Spot[] = [
      [plot.left, 110],
      [plot.right, 110],
    ];
    const taken = { left: 300, right: 520, top: 22, bottom: 100 };
    const placed = placeDirectLabels(wanted([curve(() => 0.5), curve(() => 0.55)]), plot, [taken], [level]);
    for (const label of placed) {
      expect(meet(boxOf(label), taken)).toBe(false);
      expect(hits(boxOf(label), dense(level))).toBe(0);
    }
  });

  test('that finds no free place says so', () => {
    const everywhere = Array.from({ length: 30 }, (_, i): Spot[] => [
      [plot.left, plot.top + 6 * i],
      [plot.right, plot.top + 6 * i],
    ]);
    const [label] = placeDirectLabels(wanted([curve(() => 0.5)]), plot, [], everywhere);
    expect(label!.isFree).toBe(false);
  });

  test('of a curve that is not drawn is left out', () => {
    expect(placeDirectLabels(wanted([[]]), plot)).toEqual([]);
  });
});

describe('words of a bar', () => {
  const bar = { left: 140, right: 300, label: 'front, mouth to end' };

  test('stand on it from its start', () => {
    const words = barWords(bar, plot, [curve(() => 0.6)], []);
    expect(words).toMatchObject({ x: bar.left, ledFrom: null });
  });

  test('move along it past a curve that is low there', () => {
    const words = barWords(bar, plot, [curve((share) => (share < 0.4 ? 0.08 : 0.8))], []);
    expect(hits(words.box, dense(curve((share) => (share < 0.4 ? 0.08 : 0.8))))).toBe(0);
    expect(words.x).toBeGreaterThan(bar.left);
    expect(words.x).toBeLessThan(bar.right);
    expect(words.ledFrom).toBeNull();
  });

  test('stand above a curve that is low all along, and are led to the bar', () => {
    const low = curve(() => 0.1);
    const words = barWords(bar, plot, [low], []);
    expect(hits(words.box, dense(low))).toBe(0);
    expect(words.ledFrom).not.toBeNull();
  });

  test('stand after a short bar near the axis when the cursor stands on it', () => {
    const cursor = { left: 66, right: 78, top: plot.top, bottom: plot.bottom };
    const words = barWords({ ...bar, left: 52, right: 76 }, plot, [], [cursor]);
    expect(words.x).toBeGreaterThan(76);
    expect(meet(words.box, cursor)).toBe(false);
  });

  test('make way for the cursor', () => {
    const cursor = { left: 160, right: 172, top: plot.top, bottom: plot.bottom };
    expect(meet(barWords(bar, plot, [], [cursor]).box, cursor)).toBe(false);
  });
});

describe('a name that the line of the cursor strikes through', () => {
  const flat = curve(() => 0.3);
  const asked = [{ key: 'one', text: 'Pour copy', points: flat, mark: MARK }];
  const labels = placeDirectLabels(asked, plot);
  const [label] = labels;
  const at = (label!.box.left + label!.box.right) / 2;

  test('makes way for it', () => {
    const [moved] = labelsAtCursor(labels, asked, { plot, taken: [], lines: [] }, at, []);
    expect(moved!.text).toBe('Pour copy');
    expect(at < moved!.box.left || at > moved!.box.right).toBe(true);
  });

  test('stays where it is when there is no other place', () => {
    const taken = [
      { ...plot, right: at - 4 },
      { ...plot, left: at + 4 },
    ];
    expect(labelsAtCursor(labels, asked, { plot, taken, lines: [] }, at, [])).toHaveLength(1);
  });

  test('stays where the cursor is elsewhere', () => {
    const far = at > 280 ? plot.left + 5 : plot.right - 5;
    expect(labelsAtCursor(labels, asked, { plot, taken: [], lines: [] }, far, [])).toEqual(labels);
  });
});
