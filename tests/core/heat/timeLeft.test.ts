import { describe, expect, it } from 'vitest';
import { Flow } from '$src/core/flow/flow';
import { coolFor, coolingTime } from '$src/core/heat/cooling';
import { enthalpyAtSolidFraction, enthalpyOf } from '$src/core/heat/enthalpy';
import { makeHeat } from '$src/core/heat/heat';
import { loseHeat } from '$src/core/heat/loseHeat';
import { modulusAbout } from '$src/core/heat/regionModulus';
import { timeLeft, watchTimeLeft } from '$src/core/heat/timeLeft';
import { buildMesh } from '$src/core/mesh/mesh';
import { fromCelsius } from '$src/core/units';
import { channel, FREEZING, GOOD_POUR, HEAT, pourWithHeat } from './pourWithHeat';

/** Time that metal has left before it is too stiff to run. Source: lumped cooling in closed form (cooling.ts). */

const DIE = fromCelsius(350);
const LEVEL = { sin: 0, cos: 1 };
const STIFF = enthalpyAtSolidFraction(FREEZING, FREEZING.coherency);

function fullChannel() {
  const mesh = buildMesh(channel(0.3, 0.01, 0.05), 30);
  const flow = new Flow(mesh);
  flow.volume.set(mesh.volume);
  flow.depth.fill(0.01);
  flow.level.fill(0.01);
  const plan = { ...HEAT, regions: [{ transfer: 1850, dieTemperature: DIE, later: null }] };
  const heat = makeHeat(plan, flow, mesh, [0.3], 1);
  return { mesh, flow, heat, rate: 1850 / (FREEZING.density * modulusAbout(heat, mesh, 15)) };
}

describe('the time still metal has left', () => {
  it('is the closed form\u2019s at the start, and less by what has passed', () => {
    const { mesh, flow, heat, rate } = fullChannel();
    const start = enthalpyOf(FREEZING, HEAT.startTemperature);
    const whole = coolingTime(FREEZING, start, STIFF, rate, DIE);
    expect(timeLeft(heat, flow, mesh, 15) / whole).toBeCloseTo(1, 12);
    const passed = 0.6 * whole;
    for (let k = 1; k <= 2000; k++) loseHeat(heat, flow, mesh, LEVEL, passed / 2000, (k * passed) / 2000);
    expect(Math.abs(timeLeft(heat, flow, mesh, 15) - (whole - passed))).toBeLessThan(0.002 * whole);
    // What the closed form says of it is the same heat.
    expect(heat.enthalpy[15]! / coolFor(FREEZING, start, rate, DIE, passed)).toBeCloseTo(1, 3);
  });

  it('is nothing once the metal is stiff', () => {
    const { mesh, flow, heat } = fullChannel();
    heat.enthalpy.fill(0.9 * STIFF);
    expect(timeLeft(heat, flow, mesh, 15)).toBe(0);
  });
});

describe('the least time left of a pour', () => {
  /** The front is wherever the last metal is; what the die does to it is all that differs. */
  const leastOf = (transfer: number) => {
    let watch: ReturnType<typeof watchTimeLeft> | null = null;
    const regions = [HEAT.regions[0]!, { ...HEAT.regions[1]!, transfer }];
    pourWithHeat({
      ...GOOD_POUR,
      heat: { ...HEAT, regions },
      look: ({ flow, mesh, heat }) => {
        watch ??= watchTimeLeft(flow, heat, mesh);
        let last = mesh.cells - 1;
        while (last > mesh.mouthFace && flow.depth[last]! < 1e-3) last--;
        watch.look(last > mesh.mouthFace && last < mesh.cells - 1 ? mesh.facePlace[last]! : null);
      },
    });
    return watch!.least();
  };

  it('is Infinity before there is metal in the die', () => {
    const { mesh, flow, heat } = fullChannel();
    flow.depth.fill(0);
    heat.fullTime.fill(Number.NaN);
    const watch = watchTimeLeft(flow, heat, mesh);
    watch.look(null);
    expect(watch.least()).toBe(Number.POSITIVE_INFINITY);
  });

  it('falls short of what metal at pouring temperature has, by what it lost on its way', () => {
    const thickest = 0.03 / 2;
    const fresh = (transfer: number) =>
      coolingTime(
        FREEZING,
        enthalpyOf(FREEZING, HEAT.startTemperature),
        STIFF,
        transfer / (FREEZING.density * thickest),
        DIE,
      );
    for (const transfer of [1000, 1850]) {
      const least = leastOf(transfer);
      expect(least).toBeGreaterThan(0);
      expect(least).toBeLessThan(0.9 * fresh(transfer));
    }
  });
});
