import { expect, test } from 'vitest';
import { placeNames } from '$src/ui/study/pourNames';

const plot = { left: 40, top: 20, right: 400, bottom: 300 };

test('the name of a pour stands within the plot, and clear of the marks where it can', () => {
  const at = [200, 150] as const;
  const [free] = placeNames([{ name: 'Arm', at }], [], plot);
  expect(free).toMatchObject({ isLeft: false });
  expect(free!.y).toBeGreaterThan(150);
  // Marks below and right of it push the name up or to the other side.
  const marks = [215, 230].map((x) => [x, 168] as const);
  const [moved] = placeNames([{ name: 'Arm', at }], marks, plot);
  expect(moved).not.toEqual(free);
  const [atEdge] = placeNames([{ name: 'A long name of a pour', at: [395, 150] }], [], plot);
  expect(atEdge!.isLeft).toBe(true);
});

test('two pours beside each other have their names apart', () => {
  const crosses = [150, 170].map((x) => ({ name: 'Arm as set', at: [x, 150] as const }));
  const [one, other] = placeNames(crosses, [], plot);
  expect(one!.y === other!.y && one!.isLeft === other!.isLeft).toBe(false);
});
