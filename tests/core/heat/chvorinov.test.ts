import { describe, expect, it } from 'vitest';
import { sandConstant, sandConstantOf, sandFreezingTime, sandModulus } from '$src/core/heat/chvorinov';
import { blockModulus, cylinderDiameter, cylinderModulus, sphereModulus } from '$src/core/heat/moduli';
import { fromCelsius } from '$src/core/units';
import E01 from '../../tables/heat/E01_chvorinov_examples.json';
import E08 from '../../tables/heat/E08_chvorinov_constant.json';
import { entry, HALF_A_DIGIT, relativeError } from '../../tables/heat/table';

/** E01 by row number: the table has no key of its own. Units are those of the textbook (cm, inch, minutes). */
const E01_COMPUTED = computed();

function computed(): number[] {
  const plate = blockModulus(7.5, 12.5, 2);
  const constant = sandConstant(1.6, plate);
  const riser = cylinderDiameter(sandModulus(constant, 2), 1, 2);
  const sphere = sphereModulus((6 / Math.PI) ** (1 / 3));
  const cylinder = cylinderModulus((4 / Math.PI) ** (1 / 3), (4 / Math.PI) ** (1 / 3), 2);
  const gate = sandConstant(2, blockModulus(80, 120, 20));
  const wide = sandConstant(3.5, blockModulus(200, 100, 20));
  const square = sandFreezingTime(13, blockModulus(12, 12, 1.1));
  const height = 12560 / 7.85 / ((Math.PI * 10 ** 2) / 4);
  return [
    plate,
    constant,
    riser,
    (Math.PI * riser ** 3) / 4,
    sandFreezingTime(1, sphere),
    sandFreezingTime(1, blockModulus(1, 1, 1)),
    sandFreezingTime(1, cylinder),
    sandFreezingTime(3.5, sphereModulus(10)),
    sandFreezingTime(3.5, cylinderModulus(10, 10, 2)),
    sandFreezingTime(3.5, blockModulus(10, 10, 10)),
    gate,
    cylinderDiameter(sandModulus(gate, 3), 1, 2),
    (cylinderModulus(2, 1, 2) / blockModulus(2, 2, 2)) ** 2,
    (cylinderModulus(1, 1, 2) / blockModulus(2, 2, 2)) ** 2,
    6 * sandModulus(wide, 4.2),
    square,
    1.3 * square,
    cylinderDiameter(sandModulus(13, 1.3 * square), 1.5, 2),
    height,
    sandConstant(12, cylinderModulus(10, height, 2)),
  ];
}

describe('sand moulds, square of the modulus', () => {
  it.each(E01.rows.map((row, k) => [`${row[0] || '…'} ${row[1]}`, Number(row[2]), k] as const))(
    'E01 %s',
    (_, expected, k) => expect(relativeError(E01_COMPUTED[k]!, expected)).toBeLessThan(HALF_A_DIGIT),
  );

  it('answers every row of E01', () => expect(E01_COMPUTED).toHaveLength(E01.rows.length));

  /** Foundry textbook exercises, the printed answers to the digits printed (trade-fact sources read: scribd, gate-exam.in). */
  it('agrees with the answers printed: 4.7 cm, 51.87 mm, 9.72 min each', () => {
    expect(E01_COMPUTED[2]!.toFixed(1)).toBe('4.7');
    expect(E01_COMPUTED[11]!.toFixed(2)).toBe('51.87');
    for (const k of [7, 8, 9]) expect(E01_COMPUTED[k]!.toFixed(2)).toBe('9.72');
  });

  /**
   * The table does not print what metal its two cases are; these rounded properties give its constants back to the last
   * digit. They are inputs of the check, not recommended data.
   */
  const CASES = [
    { solidDensity: 2550, latentHeat: 397e3, freezing: 660 },
    { solidDensity: 7210, latentHeat: 272e3, freezing: 1540 },
  ];

  it.each(E08.rows.map((row, k) => [String(row[0]), row, CASES[k]!] as const))('E08 %s', (_, row, metal) => {
    const { k_sand, rho_sand, c_sand, T0_C } = E08.parameters;
    const mould = { conductivity: k_sand, density: rho_sand, heat: c_sand, temperature: fromCelsius(T0_C) };
    const constant = sandConstantOf(metal.solidDensity, metal.latentHeat, fromCelsius(metal.freezing), mould);
    expect(relativeError(constant, entry(E08, row, 'C_s_per_m2'))).toBeLessThan(HALF_A_DIGIT);
    expect(relativeError(sandFreezingTime(constant, 0.01), entry(E08, row, 't_for_M_10mm_s'))).toBeLessThan(
      HALF_A_DIGIT,
    );
  });
});
