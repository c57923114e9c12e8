import { describe, expect, it } from 'vitest';
import { GRAVITY } from '$src/core/gravity';
import { capillaryLength, standHeight, standSigma } from '$src/core/metal/capillarity';
import { fromDegrees } from '$src/core/units';

/**
 * Check table C04, height of a large sessile drop: h = 2 √(γ/(ρ g)) sin(θ/2), g = 9.81 m/s², computed with 30 digits, kept to 10.
 * Formula: de Gennes, Brochard-Wyart & Quéré 2004 (from memory). Aluminium: Garcia-Cordovilla et al. 1986, abstract read;
 * mercury from memory.
 */
const C04: readonly (readonly [string, number, number, number, number, number])[] = [
  ['mercury on glass', 0.4855, 13534, 140, 0.001912260382, 0.003593873939],
  ['mercury, non-wetting', 0.4855, 13534, 180, 0.001912260382, 0.003824520763],
  ['aluminium oxidised', 0.865, 2377, 90, 0.006090584307, 0.00861338693],
  ['aluminium oxidised', 0.865, 2377, 120, 0.006090584307, 0.01054920147],
  ['aluminium oxidised', 0.865, 2377, 150, 0.006090584307, 0.01176610536],
  ['aluminium oxidised', 0.865, 2377, 180, 0.006090584307, 0.01218116861],
  ['aluminium clean', 1.1, 2377, 120, 0.006868268238, 0.01189618955],
  ['aluminium clean', 1.1, 2377, 180, 0.006868268238, 0.01373653648],
  ['water', 0.0728, 998.2, 90, 0.002726606108, 0.003856003337],
  ['water', 0.0728, 998.2, 180, 0.002726606108, 0.005453212215],
];

/** Half a unit in the tenth digit, relative. */
const HALF_A_DIGIT = 5e-10;

describe('capillary stand', () => {
  it.each(C04)('%s: γ %d, ρ %d, contact %d°', (_, surfaceTension, density, degrees, length, height) => {
    expect(Math.abs(capillaryLength(surfaceTension, density) / length - 1)).toBeLessThan(HALF_A_DIGIT);
    expect(Math.abs(standHeight(surfaceTension, density, fromDegrees(degrees)) / height - 1)).toBeLessThan(
      HALF_A_DIGIT,
    );
  });

  it('agrees with the force balance the level fill uses: h² = 2 sigma / g', () => {
    const angle = fromDegrees(150);
    const height = standHeight(0.865, 2400, angle);
    expect(Math.sqrt((2 * standSigma(0.865, 2400, angle)) / GRAVITY)).toBeCloseTo(height, 14);
  });
});
