import { describe, expect, test } from 'vitest';
import { checkSection } from '$src/core/section/checkSection';
import type { Section } from '$src/core/section/section';
import { flushBasin } from '$src/core/section/shapes';
import { wrongFields } from '$src/ui/section/wrongFields';

const section = flushBasin();
const fieldsOf = (wrong: Section) => wrongFields(wrong, checkSection(wrong));

describe('what is wrong is told at a field', () => {
  test.each<[string, Section]>([
    ['roof.2.x', { ...section, roof: section.roof.map((p, i) => (i === 2 ? { ...p, x: 0.01 } : p)) }],
    [
      'floor.1.y',
      { ...section, floor: section.floor.map((p, i) => (i === 1 ? { ...p, y: Number.NaN } : p)) },
    ],
    [
      'regions.1.width',
      { ...section, regions: section.regions.map((r, i) => (i === 1 ? { ...r, width: 0 } : r)) },
    ],
    ['mouth', { ...section, mouth: 9 }],
    ['cavities', { ...section, cavities: 0 }],
    ['pivot.y', { ...section, pivot: { x: 0, y: 99 } }],
    ['vents.0.blocked', { ...section, vents: [{ ...section.vents[0]!, blocked: 2 }] }],
  ])('%s', (path, wrong) => expect(fieldsOf(wrong)).toEqual([path]));

  test.each<[string, Section]>([
    ['no regions at all', { ...section, regions: [] }],
    ['an opening that ends before it begins', { ...section, openings: [{ wall: 'roof', from: 2, to: 1 }] }],
    [
      'a last region that does not end with the die',
      { ...section, regions: section.regions.map((r, i) => (i === 1 ? { ...r, end: 0.3 } : r)) },
    ],
  ])('but in the list at the top: %s', (_, wrong) => {
    expect(checkSection(wrong)).not.toEqual([]);
    expect(fieldsOf(wrong)).toEqual([]);
  });
});
