import { expect, test } from 'vitest';
import { lineChart } from '$src/report/bookPage/lineChart';
import { spread } from '$src/report/bookPage/lineEnds';

test('labels keep a line apart, in the order of their ends, within the field', () => {
  const ends = [490, 10, 485, 488, 12, 250, 480, 11];
  const places = spread(ends, 500);
  const order = ends.map((_, index) => index).toSorted((a, b) => ends[a]! - ends[b]!);
  const down = order.map((index) => places[index]!);
  for (const [index, place] of down.slice(1).entries())
    expect(place - down[index]!).toBeGreaterThanOrEqual(40);
  expect(Math.max(...places)).toBeLessThanOrEqual(500);
  expect(spread([100, 300], 500)).toEqual([100, 300]);
});

const axis = { label: '', mark: String };
const chartOf = (names: readonly string[]): string =>
  lineChart({
    title: 'front speed',
    sentence: '',
    lines: names.map((name, look) => ({ name, look, x: [0, 1], y: [0, 1 - look / 10] })),
    x: { ...axis, domain: [0, 2] },
    y: { ...axis, domain: [0, 1] },
    limits: [],
  });

test('every line of several is labelled at its end and in the key, with its whole name', () => {
  const names = ['Uphill pour <5 s>', 'Uphill pour 6 s', 'Uphill pour 12 s'];
  const chart = chartOf(names);
  const labels = [
    ...chart.matchAll(
      /<span class="end" style="top:([\d.]+)%" title="([^"]+)"><b>(\d)<\/b> <i>([^<]+)<\/i>/g,
    ),
  ];
  expect(labels.map(([, , title]) => title)).toEqual(['Uphill pour &lt;5 s&gt;', ...names.slice(1)]);
  expect(labels.map(([, , , number]) => number)).toEqual(['1', '2', '3']);
  expect(new Set(labels.map(([, , , , name]) => name)).size).toBe(3);
  expect(chart).toContain('</svg><b>2</b> Uphill pour 6 s</li>');
  // Led from where the line ends, half way across, to the edge of the field.
  expect(chart).toContain('<path class="led" d="M500 50H1000"/>');
  expect(chartOf(['Alone'])).not.toContain('class="end"');
});
