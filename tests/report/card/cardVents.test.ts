import { expect, test } from 'vitest';
import type { Section, Vent } from '$src/core/section/section';
import { flushBasin } from '$src/core/section/shapes';
import { fromMillimetres, fromSquareMillimetres, METRIC } from '$src/core/units';
import { cardVents } from '$src/report/card/cardVents';

const section = flushBasin();
const vent = (fromMouth: number, area: number, blocked = 0): Vent => ({
  place: section.mouth + fromMillimetres(fromMouth),
  area: fromSquareMillimetres(area),
  blocked,
});
const said = (vents: readonly Vent[], more: Partial<Section> = {}) => {
  const { label, number, note } = cardVents({ ...section, vents, ...more }, METRIC);
  return `${label}: ${number}, ${note}`;
};

test('the card tells where gas leaves: each open vent with what is free of it, in the order metal comes to them', () => {
  expect(said([vent(158, 50), vent(80, 30, 0.5)])).toBe(
    'open vents: 2, 15 mm² at 80 mm and 50 mm² at 158 mm from the mouth',
  );
  expect(said([vent(158, 50), vent(80, 30, 1)])).toBe('open vents: 1, 50 mm² at 158 mm from the mouth');
  expect(said([vent(158, 4.5)])).toBe('open vents: 1, 4.5 mm² at 158 mm from the mouth');
  expect(said([vent(158, 50)], { cavities: 2 })).toMatch(/^open vents, each cavity: 1/);
});

test('none is said as well, and what there is no room for stands in the book', () => {
  expect(said([])).toBe('open vents: 0, gas leaves by the basin only');
  const five = [10, 20, 30, 40, 50].map((place) => vent(place, 20));
  expect(said(five)).toMatch(/^open vents: 5, .*30 mm from the mouth; 2 more: see the book$/);
});

test('a vent over the basin is told as that, and not by a place with a minus', () => {
  expect(said([vent(-20, 40), vent(100, 12)])).toBe(
    'open vents: 2, 40 mm² over the basin and 12 mm² at 100 mm from the mouth',
  );
  expect(said([vent(-20, 40)])).toBe('open vents: 1, 40 mm² over the basin');
});
