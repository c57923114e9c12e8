import { expect, test } from 'vitest';
import { isBenchMachine } from '$src/core/tilt/machine/isBenchMachine';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';

const { valve, oil, weights } = BENCH_MACHINE;

test('the invented machine is known as such whatever its valve and oil, and no longer once a weight is measured', () => {
  if (valve.by === 'Kv') throw new Error('The bench machine is set by turns.');
  const turned: Machine = {
    ...BENCH_MACHINE,
    valve: { ...valve, open: 2.3 },
    oil: { ...oil, temperature: 280 },
  };
  expect(isBenchMachine(turned)).toBe(true);
  const weighed: Machine = {
    ...turned,
    weights: weights.map((weight) => ({ ...weight, mass: weight.mass + 0.2 })),
  };
  expect(isBenchMachine(weighed)).toBe(false);
  const plumbed: Machine = { ...turned, bearing: { ...turned.bearing, friction: 0.09 } };
  expect(isBenchMachine(plumbed)).toBe(false);
});
