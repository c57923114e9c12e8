import { describe, expect, it } from 'vitest';
import {
  blockModulus,
  cylinderDiameter,
  cylinderModulus,
  FEEDER_MARGIN,
  hemisphereModulus,
  sphereModulus,
} from '$src/core/heat/moduli';
import { fromMillimetres, toMillimetres } from '$src/core/units';
import E02 from '../../tables/heat/E02_moduli.json';
import E02b from '../../tables/heat/E02b_feeder_example.json';
import { entry, HALF_A_DIGIT, named, relativeError } from '../../tables/heat/table';

const SHAPES: Readonly<Record<string, number>> = {
  'cylinder H=D all cooled': cylinderModulus(1, 1, 2),
  'cylinder H=D, one end not cooled': cylinderModulus(1, 1, 1),
  'cylinder H=1.5D all cooled': cylinderModulus(1, 1.5, 2),
  'cylinder H=1.5D one end not cooled': cylinderModulus(1, 1.5, 1),
  'cylinder H=2D one end not cooled': cylinderModulus(1, 2, 1),
  sphere: sphereModulus(1),
  'hemisphere on D, flat not cooled': hemisphereModulus(1),
  'cube side D': blockModulus(1, 1, 1),
  'bar D x D infinite': blockModulus(1, 1, Number.POSITIVE_INFINITY),
  'plate thickness D infinite': blockModulus(1, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY),
  'plate D x 5D x 5D': blockModulus(1, 5, 5),
};

/** E02, E02b: standard geometry; the feeder rule from memory of the handbooks. */
describe('moduli', () => {
  it.each(E02.rows.map((row) => [String(row[0]), row] as const))('E02 %s', (shape, row) => {
    expect(relativeError(SHAPES[shape]!, entry(E02, row, 'M_over_D'))).toBeLessThan(HALF_A_DIGIT);
  });

  it('E02b: feeder of a 150 × 100 × 20 mm plate', () => {
    const expected = named(E02b);
    const casting = blockModulus(fromMillimetres(150), fromMillimetres(100), fromMillimetres(20));
    const wanted = FEEDER_MARGIN * casting;
    expect(toMillimetres(casting)).toBeCloseTo(expected.get('casting modulus mm')!, 9);
    expect(toMillimetres(wanted)).toBeCloseTo(expected.get('required feeder modulus mm')!, 9);
    expect(toMillimetres(cylinderDiameter(wanted, 1, 2))).toBeCloseTo(
      expected.get('D for H=D all cooled mm')!,
      9,
    );
    expect(toMillimetres(cylinderDiameter(wanted, 1.5, 1))).toBeCloseTo(
      expected.get('D for H=1.5D one end not cooled mm')!,
      9,
    );
  });
});
