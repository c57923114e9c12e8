import { describe, expect, it } from 'vitest';
import type { Book } from '$src/cells/kinds';
import type { PourPlan } from '$src/core/pour/plan';
import type { Fold } from '$src/core/pour/record';
import { fromMillimetres } from '$src/core/units';
import { heldPocket } from '$src/report/heldPocket';
import { ventNeeded } from '$src/report/ventNeeded';
import { computed } from '../books/computed';
import { planOf } from '../books/planOf';
import { betterTilt } from '../books/sources/betterTilt';
import { armBehind } from '../books/sources/shop';
import { inventedPlan, inventedRecord } from './inventedRecord';

const shutIn = (time: number, area: number): Fold => ({
  ...inventedRecord().folds[0]!,
  kind: 'gas sealed in',
  time,
  // 100 Pa drive gas of 0.5 kg/m³ out at 0.6 × 20 m/s.
  details: { vent_area_for_100_Pa_m2: area, gas_displaced_m3_per_s: 12 * area },
});

const oneCavity: PourPlan = { ...inventedPlan, section: { ...inventedPlan.section, cavities: 1 } };

/** The better tilt's book behind a narrow basin, filled so high that the measured tilt shuts gas in. */
const shutsGasIn: Book = {
  ...betterTilt,
  cells: betterTilt.cells.map((cell) => {
    if (cell.kind === 'section') return { ...cell, section: armBehind({ length: 115, pit: 0, open: 50 }) };
    if (cell.kind === 'charge') return { ...cell, charge: { by: 'head', head: fromMillimetres(22) } };
    return cell;
  }),
};

describe('the vent that gas shut in would have needed', () => {
  it('lets it out as fast as the metal came, though held gas was hardly pressed', () => {
    // The invented die of 200 × 30 × 30 mm fills in 6.5 s.
    const asItCame = (0.2 * 0.03 * 0.03) / 6.5 / 12;
    const needed = (area: number) =>
      ventNeeded(inventedRecord({ plan: oneCavity, folds: [shutIn(3, area)] }));
    expect(needed(1e-8) / asItCame).toBeCloseTo(1, 6);
    expect(needed(2e-5)).toBe(2e-5);
  });

  it('is told for each cavity', () => {
    const folds = [shutIn(3, 2e-5)];
    expect(ventNeeded(inventedRecord({ folds }))).toBe(1e-5);
    expect(ventNeeded(inventedRecord({ folds: [] }))).toBe(0);
  });

  it('is as good as four times as much, where a tenth leaves more gas in', () => {
    const plan = planOf(shutsGasIn, 'pour-measured', 200);
    const held = computed(plan);
    const pocket = heldPocket(held)!;
    const shareWith = (along: number, area: number): number => {
      const place = plan.section.mouth + pocket.from + along * (pocket.to - pocket.from);
      const vents = [...plan.section.vents, { place, area, blocked: 0 }];
      return computed({ ...plan, section: { ...plan.section, vents } }).figures.finalShare;
    };
    expect(held.figures.gasHeld).toBe(true);
    // Where in the pocket it opens decides whether the last of the gas gets out; how large it is, no longer.
    for (const along of [0.5, 0.9]) {
      const [tenth, told, fourfold] = [0.1, 1, 4].map((times) => shareWith(along, times * ventNeeded(held)));
      expect(told! - held.figures.finalShare).toBeGreaterThan(0.15);
      expect(Math.abs(fourfold! - told!)).toBeLessThan(0.03);
      expect(told! - tenth!).toBeGreaterThan(0.04);
    }
  });
});
