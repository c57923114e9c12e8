import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Flow } from '$src/core/flow/flow';
import { carryHeat, LOSS_TIME } from '$src/core/heat/carryHeat';
import { coolFor } from '$src/core/heat/cooling';
import { enthalpyOf, temperatureOf } from '$src/core/heat/enthalpy';
import { heatInMetal, makeHeat } from '$src/core/heat/heat';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import { loseHeat } from '$src/core/heat/loseHeat';
import { modulusAbout } from '$src/core/heat/regionModulus';
import { buildMesh } from '$src/core/mesh/mesh';
import { fromCelsius } from '$src/core/units';
import { channel, FREEZING, HEAT } from './pourWithHeat';

const LEVEL = { sin: 0, cos: 1 };
const DIE = fromCelsius(350);
const ONE_REGION: HeatPlan = {
  ...HEAT,
  regions: [{ transfer: 1850, dieTemperature: DIE, later: null }],
};
const LENGTH = 0.3;
const HEIGHT = 0.01;
const START = enthalpyOf(FREEZING, HEAT.startTemperature);

/** A closed channel 300 × 10 × 50 mm, full of still metal. */
function fullChannel(cells: number, plan = ONE_REGION) {
  const mesh = buildMesh(channel(LENGTH, HEIGHT, 0.05), cells);
  const flow = new Flow(mesh);
  flow.volume.set(mesh.volume);
  flow.depth.fill(HEIGHT);
  flow.level.fill(HEIGHT);
  return { mesh, flow, heat: makeHeat(plan, flow, mesh, [LENGTH], 1) };
}

/** Temperature in the middle of the still channel after 8 s in steps of dt, and the lumped closed form's. */
function stillFor8s(dt: number): { found: number; exact: number } {
  const { mesh, flow, heat } = fullChannel(30);
  for (let k = 1; k <= Math.round(8 / dt); k++) loseHeat(heat, flow, mesh, LEVEL, dt, k * dt);
  const rate = 1850 / (FREEZING.density * modulusAbout(heat, mesh, 15));
  return {
    found: heat.temperature[15]!,
    exact: temperatureOf(FREEZING, coolFor(FREEZING, START, rate, DIE, 8)),
  };
}

describe('still metal', () => {
  it('cools as the lumped closed form does; the error falls with the step', () => {
    const [coarse, fine] = [0.08, 0.04].map(stillFor8s);
    const ratio = (coarse!.found - coarse!.exact) / (fine!.found - fine!.exact);
    expect(ratio).toBeGreaterThan(1.8);
    expect(ratio).toBeLessThan(2.2);
    const used = stillFor8s(LOSS_TIME);
    expect(Math.abs(used.found - used.exact)).toBeLessThan(0.05);
  });

  it('gives the die’s surface what it loses, when that may warm', () => {
    const { mesh, flow, heat } = fullChannel(30, { ...ONE_REGION, dieSurface: 40e3 });
    const before = heatInMetal(heat, flow);
    for (let k = 1; k <= 4000; k++) carryHeat(heat, flow, mesh, LEVEL, 1e-3, k * 1e-3);
    const gained = heat.dieTemperature.reduce((sum, t, i) => sum + (t - DIE) * heat.dieHeat[i]!, 0);
    expect(gained / heat.lost).toBeCloseTo(1, 9);
    expect((before - heatInMetal(heat, flow)) / heat.lost).toBeCloseTo(1, 9);
    // Both ends of the heat meet between them, never past each other.
    for (let i = 0; i < mesh.cells; i++)
      expect(heat.temperature[i]!).toBeGreaterThan(heat.dieTemperature[i]!);
  });

  it.each([30, 120, 480])('warms an end wall no more than floor and roof, on %i mesh cells', (cells) => {
    const { mesh, flow, heat } = fullChannel(cells, { ...ONE_REGION, dieSurface: 20e3 });
    for (let k = 1; k <= 1000; k++) carryHeat(heat, flow, mesh, LEVEL, 2e-3, k * 2e-3);
    const middle = heat.dieTemperature[cells / 2]!;
    expect(middle - DIE).toBeGreaterThan(20);
    expect(heat.dieTemperature[cells - 1]!).toBeLessThanOrEqual(middle + 1e-9);
  });

  it('takes the later transfer after so many seconds of contact', () => {
    const later = { after: 1, transfer: 450 };
    const { mesh, flow, heat } = fullChannel(30, {
      ...ONE_REGION,
      regions: [{ transfer: 1850, dieTemperature: DIE, later }],
    });
    const lost: number[] = [];
    for (let k = 1; k <= 2000; k++) {
      carryHeat(heat, flow, mesh, LEVEL, 1e-3, k * 1e-3);
      if (k === 990 || k === 1000 || k === 1010) lost.push(heat.lost);
    }
    const [first, second] = [lost[1]! - lost[0]!, lost[2]! - lost[1]!];
    expect(second / first).toBeCloseTo(450 / 1850, 1);
  });
});

describe('running metal', () => {
  /**
   * Steady run through the channel: ρ c q dT/dx = k A d²T/dx² − h P (T − T_die), so T falls as an exponential of the place.
   * What conducts against the run makes it fall at the entrance by half of what the root under it is over 1.
   * Source: Danckwerts, Chem. Eng. Sci. 2 (1953) 1 (from memory), solved here.
   */
  function steadyRun(cells: number): number {
    const { mesh, flow, heat } = fullChannel(cells);
    const discharge = 0.4 * HEIGHT * 0.05;
    flow.flux.fill(discharge);
    // Heat is lost every second step: half way between two losses metal is as warm as it is on average.
    for (let k = 1; k <= 2501; k++) carryHeat(heat, flow, mesh, LEVEL, 1e-3, k * 1e-3);
    const balance = heatInMetal(heat, flow) + heat.lost - heat.brought;
    expect(balance / (FREEZING.density * LENGTH * HEIGHT * 0.05 * START)).toBeCloseTo(1, 9);
    const last = mesh.cells - 2;
    const middle = (mesh.x[last]! + mesh.x[last + 1]!) / 2;
    const carriesOff = FREEZING.density * FREEZING.liquidHeat * discharge;
    const fallPerLength = (1850 * 2 * (0.05 + HEIGHT)) / carriesOff;
    const conducts = (FREEZING.conductivity * HEIGHT * 0.05) / carriesOff;
    const root = Math.sqrt(1 + 4 * conducts * fallPerLength);
    // The end wall that the metal comes in through cools it too.
    const atEntrance = (2 / (1 + root)) * Math.exp((-1850 * 0.05 * HEIGHT) / carriesOff);
    const fall = (middle * (root - 1)) / (2 * conducts);
    const exact = DIE + (HEAT.startTemperature - DIE) * atEntrance * Math.exp(-fall);
    return temperatureOf(FREEZING, heat.enthalpy[last]!) - exact;
  }

  it('cools along a channel as the closed form does, within hundredths of a kelvin, and closer on a finer mesh', () => {
    const [coarse, fine] = [steadyRun(30), steadyRun(60)] as const;
    expect(Math.abs(coarse)).toBeLessThan(0.015);
    expect(Math.abs(fine)).toBeLessThan(0.004);
  });

  const eight = (min: number, max: number) =>
    fc.array(fc.double({ min, max, noNaN: true }), { minLength: 8, maxLength: 8 });
  const noLoss = { ...ONE_REGION, regions: [{ transfer: 1e-300, dieTemperature: DIE, later: null }] };

  /** Eight cells whose fillings become others' within one step, so that several cells of metal may pass through one. */
  function rearrange(fills: readonly number[], order: readonly number[], heats: readonly number[]) {
    const { mesh, flow, heat } = fullChannel(8, noLoss);
    const cell = mesh.volume[0]!;
    const dt = 1e-3;
    for (let i = 0; i < 8; i++) {
      heat.volumeBefore[i] = fills[i]! * cell;
      heat.enthalpy[i] = fills[i]! > 0 ? heats[i]! : 0;
      const wanted = fills[order[i]!]! * cell;
      if (i < 7) flow.flux[i + 1] = flow.flux[i]! + (heat.volumeBefore[i]! - wanted) / dt;
    }
    for (let i = 0; i < 8; i++)
      flow.volume[i] = Math.max(0, heat.volumeBefore[i]! - dt * (flow.flux[i + 1]! - flow.flux[i]!));
    const sum = (volumes: Float64Array) =>
      volumes.reduce((total, v, i) => total + v * heat.enthalpy[i]!, 0) / cell;
    const before = sum(heat.volumeBefore);
    const passesThrough = Array.from(heat.volumeBefore).some(
      (held, i) => dt * (Math.max(0, flow.flux[i + 1]!) + Math.max(0, -flow.flux[i]!)) > held,
    );
    carryHeat(heat, flow, mesh, LEVEL, dt, dt);
    return { flow, heat, before, after: sum(flow.volume), passesThrough };
  }

  it('should always keep its heat and mix only what it is made of, whatever runs through a cell', () => {
    let through = 0;
    fc.assert(
      fc.property(
        eight(0, 1),
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], { minLength: 8 }),
        eight(-1e5, 1e6),
        (fills, order, heats) => {
          const { flow, heat, before, after, passesThrough } = rearrange(fills, order, heats);
          if (passesThrough) through++;
          expect(Math.abs(after - before) / 8e6).toBeLessThan(1e-12);
          const wet = heats.filter((_, i) => fills[i]! > 0);
          for (let i = 0; i < 8; i++) {
            if (flow.volume[i]! <= 1e-18) continue;
            expect(heat.enthalpy[i]!).toBeLessThanOrEqual(Math.max(...wet) + 1e-6);
            expect(heat.enthalpy[i]!).toBeGreaterThanOrEqual(Math.min(...wet) - 1e-6);
          }
        },
      ),
      { numRuns: 300 },
    );
    expect(through).toBeGreaterThan(30);
  });

  it('does the same from right to left as from left to right', () => {
    const fills = [1, 0.05, 0.1, 0.6, 0, 0.2, 0.02, 0.9];
    const order = [4, 1, 6, 7, 5, 0, 3, 2];
    const heats = [6e5, 2e5, -5e4, 4e5, 0, 3e5, 5e5, 1e5];
    const right = rearrange(fills, order, heats);
    const left = rearrange(fills.toReversed(), order.map((k) => 7 - k).toReversed(), heats.toReversed());
    for (let i = 0; i < 8; i++) {
      // Cell 0 runs dry, all but round-off: it has no heat content to compare.
      if (fills[order[i]!] === 0) continue;
      expect(Math.abs(right.heat.enthalpy[i]! - left.heat.enthalpy[7 - i]!)).toBeLessThan(1e-6);
    }
  });

  it('uses the same arrays after 1000 steps', () => {
    const { mesh, flow, heat } = fullChannel(30);
    const before = Object.values(heat).filter((value) => ArrayBuffer.isView(value));
    for (let k = 1; k <= 1000; k++) carryHeat(heat, flow, mesh, LEVEL, 1e-3, k * 1e-3);
    const after = Object.values(heat).filter((value) => ArrayBuffer.isView(value));
    after.forEach((array, i) => {
      expect(Object.is(array, before[i])).toBe(true);
    });
  });
});
