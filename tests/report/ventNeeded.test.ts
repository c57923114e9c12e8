import { describe, expect, it } from 'vitest';
import type { PourPlan } from '$src/core/pour/plan';
import type { Fold, PourRecord } from '$src/core/pour/record';
import { heldPocket } from '$src/report/heldPocket';
import { ventNeeded } from '$src/report/ventNeeded';
import { computed } from '../books/computed';
import { planOf } from '../books/planOf';
import { betterTilt } from '../books/sources/betterTilt';
import { inventedPlan, inventedRecord } from './inventedRecord';

const shutIn = (time: number, area: number): Fold => ({
  ...inventedRecord().folds[0]!,
  kind: 'gas sealed in',
  time,
  // 100 Pa drive gas of 0.5 kg/m³ out at 0.6 × 20 m/s.
  details: { vent_area_for_100_Pa_m2: area, gas_displaced_m3_per_s: 12 * area },
});

const oneCavity: PourPlan = { ...inventedPlan, section: { ...inventedPlan.section, cavities: 1 } };

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

  it('fills a die that it was told for', () => {
    const plan = planOf(betterTilt, 'pour-measured', 200);
    const held = computed(plan);
    const pocket = heldPocket(held)!;
    const withVent = (area: number): PourRecord => {
      const place = plan.section.mouth + (pocket.from + pocket.to) / 2;
      const vents = [...plan.section.vents, { place, area, blocked: 0 }];
      return computed({ ...plan, section: { ...plan.section, vents } });
    };
    expect(held.figures.gasHeld).toBe(true);
    expect(withVent(ventNeeded(held)).figures.filledTime).not.toBeNull();
    expect(withVent(ventNeeded(held) / 10).figures.filledTime).toBeNull();
  });
});
