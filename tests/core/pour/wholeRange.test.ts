import { expect, test } from 'vitest';
import { toDegrees } from '$src/core/units';
import { computePour, FLUSH_SECTION, PIT_SECTION, pourPlan } from '$src/verify/referencePours';

test.each([
  ['flush basin', FLUSH_SECTION],
  ['pit behind a lip', PIT_SECTION],
])('a pour over the whole range, +75° to −100°, keeps its metal: %s', (_, section) => {
  for (const gate of [false, true]) {
    const record = computePour(pourPlan({ section, area: 2880, start: 75, rate: 60 }, 100, gate, -100));
    expect(record.outcome.kind).not.toMatch(/^stopped/);
    expect(record.health.volumeDrift).toBeLessThan(1e-12);
    expect(record.health.greatestSpeed).toBeLessThan(3);
    expect(toDegrees(record.frames.inclination.at(-1)!)).toBeCloseTo(-100, 9);
  }
});
