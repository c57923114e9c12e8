import { describe, expect, it } from 'vitest';
import { GRAVITY } from '$src/core/gravity';
import { criticalSpeed, criticalSpeedOf } from '$src/core/metal/criticalSpeed';
import { metalNamed } from '$src/core/metal/metals';

/**
 * Published critical speeds: Campbell, Castings / Complete Casting Handbook, table of critical velocities, from memory,
 * except where read: oxidised and clean aluminium from Garcia-Cordovilla et al., J. Mater. Sci. 21 (1986) 2787 (abstract),
 * AZ91 from Int. J. Thermophys. 33 (2012) 484 (abstract). Two figures are published, so ±0.015 m/s is what they can decide.
 */
const PUBLISHED = [
  { liquid: 'aluminium, oxidised', surfaceTension: 0.865, density: 2380, computed: 0.49, published: 0.5 },
  { liquid: 'aluminium, clean', surfaceTension: 1.1, density: 2380, computed: 0.52, published: 0.5 },
  { liquid: 'magnesium AZ91', surfaceTension: 0.609, density: 1640, computed: 0.49, published: 0.48 },
  { liquid: 'copper', surfaceTension: 1.285, density: 8000, computed: 0.4, published: 0.4 },
  { liquid: 'zinc', surfaceTension: 0.775, density: 6575, computed: 0.37, published: 0.37 },
  { liquid: 'iron', surfaceTension: 1.87, density: 7015, computed: 0.45, published: 0.45 },
  { liquid: 'nickel', surfaceTension: 1.78, density: 7905, computed: 0.43, published: 0.43 },
  { liquid: 'titanium', surfaceTension: 1.65, density: 4110, computed: 0.5, published: 0.5 },
  { liquid: 'water', surfaceTension: 0.072, density: 1000, computed: 0.33, published: 0.33 },
];

describe('critical front speed', () => {
  it.each(PUBLISHED)('$liquid agrees with the published value', (row) => {
    const speed = criticalSpeedOf(row.surfaceTension, row.density);
    expect(Math.abs(speed - row.computed)).toBeLessThan(0.0051);
    expect(Math.abs(speed - row.published)).toBeLessThan(0.025);
  });

  it('is the speed of a fall as high as a non-wetting puddle stands (Campbell, second route, from memory)', () => {
    const fall = 2 * Math.sqrt(0.865 / (2380 * GRAVITY));
    expect(criticalSpeedOf(0.865, 2380)).toBeCloseTo(Math.sqrt(2 * GRAVITY * fall), 12);
  });

  it('goes as the fourth root of surface tension', () => {
    expect(criticalSpeedOf(16 * 0.9, 2400)).toBeCloseTo(2 * criticalSpeedOf(0.9, 2400), 12);
  });

  it('gives way to the value the user typed', () => {
    const metal = metalNamed('A356')!;
    expect(criticalSpeed({ ...metal, criticalSpeedOverride: 0.42 })).toBe(0.42);
    expect(criticalSpeed(metal)).toBe(criticalSpeedOf(metal.surfaceTension.value, metal.density.value));
  });

  it('puts aluminium bronze at about 0.4 m/s (Halvaee & Campbell, AFS Trans. 1997, from memory)', () => {
    expect(criticalSpeed(metalNamed('aluminium bronze')!)).toBeCloseTo(0.41, 2);
  });
});
