import { expect, test } from 'vitest';
import { METRIC } from '$src/core/units';
import type { Margin } from '$src/report/study/margins';
import type { NamedAxis } from '$src/report/study/studyFile';
import { mapPlot } from '$src/ui/study/mapPlot';
import { marginLines, setNameAt, setPointBoxes } from '$src/ui/study/mapSetPoint';

const axes: readonly NamedAxis[] = [
  {
    setting: 'tilt.valve',
    name: 'valve opening',
    quantity: 'turns',
    from: 0,
    to: 2,
    points: 20,
    setPoint: 1,
  },
  {
    setting: 'tilt.start',
    name: 'start angle',
    quantity: 'angle',
    from: 0,
    to: 0.5,
    points: 20,
    setPoint: 0.5,
  },
];
const plot = mapPlot(axes[0]!, axes[1]!, 640, 500);
const margin = (direction: 1 | -1): Margin => ({
  axis: 0,
  direction,
  limit: 1 + 0.5 * direction,
  distance: 0.5,
  meets: 'laps',
});

test('at the upper edge of a map the words of the set point stay within it, clear of each other', () => {
  for (const y of [plot.top, plot.top + 12, plot.top + 30, 250]) {
    const set = { x: 340, y };
    const lines = marginLines(plot, set, [margin(-1), margin(1)], axes, METRIC);
    expect(lines).toHaveLength(2);
    const name = setNameAt(set, plot).box;
    const words = setPointBoxes(set, lines, plot).slice(-2);
    for (const box of words) {
      expect(box.top).toBeGreaterThanOrEqual(plot.top);
      expect(
        box.bottom <= name.top || box.top >= name.bottom || box.right <= name.left || box.left >= name.right,
      ).toBe(true);
    }
  }
});
