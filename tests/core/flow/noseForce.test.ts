import { describe, expect, it } from 'vitest';
import { frontResistance } from '$src/core/flow/forces';
import { noseForce } from '$src/core/flow/gate';
import { GRAVITY } from '$src/core/gravity';
import { fromDegrees } from '$src/core/units';

/** Balance of momentum of a front's own metal: what the wall ahead bears and what its skin bears are γ (1 − cos θ)/ρ together. */

const resistance = frontResistance(0.9, fromDegrees(150), 2400);
const stand = Math.sqrt((2 * resistance.openFront) / GRAVITY);

describe('what the skin takes behind the nose of an open front', () => {
  const height = 0.01;
  const at = (depth: number) => noseForce((GRAVITY * depth * depth) / 2, 0.5, 0, height, 0.03, resistance);

  it('is the whole force on a dry floor, and nothing once the nose stands by itself', () => {
    expect(at(0) * height).toBeCloseTo(resistance.openFront, 15);
    expect(at(stand)).toBeLessThan(1e-12);
    expect(at(1.2 * stand)).toBe(0);
  });

  it('balances a puddle at its stand wherever in the mesh cell its front is', () => {
    for (const share of [0.1, 0.4, 0.7, 0.95]) {
      const nose = share * stand;
      const mean = (stand + nose) / 2;
      const push = GRAVITY * (stand - nose);
      const held = noseForce((GRAVITY * nose * nose) / 2, share, 0, mean, 1, resistance);
      expect(held / push).toBeCloseTo(1, 12);
    }
  });
});
