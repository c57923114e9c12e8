import { describe, expect, it } from 'vitest';
import { Flow } from '$src/core/flow/flow';
import { carryHeat } from '$src/core/heat/carryHeat';
import { conduct } from '$src/core/heat/conduct';
import { enthalpyOf, temperatureOf } from '$src/core/heat/enthalpy';
import { makeHeat } from '$src/core/heat/heat';
import { buildMesh } from '$src/core/mesh/mesh';
import { liquidOf } from '$src/core/metal/liquidOf';
import { metalNamed } from '$src/core/metal/metals';
import { heatPlanOf } from '$src/core/pour/heatPlanOf';
import { runPour } from '$src/core/pour/runPour';
import { fromCelsius } from '$src/core/units';
import { armBehind, steady } from '../../books/sources/shop';
import { channel, FREEZING, HEAT } from './pourWithHeat';

const LENGTH = 0.1;

/** A channel full of metal whose temperature is a mean and one cosine along it. */
function channelWith(cells: number, swing: number, transfer = HEAT.regions[1]!.transfer) {
  const mesh = buildMesh(channel(LENGTH, 0.01, 0.05), cells);
  const flow = new Flow(mesh);
  flow.volume.set(mesh.volume);
  const heat = makeHeat({ ...HEAT, regions: [{ ...HEAT.regions[1]!, transfer }] }, flow, mesh, [LENGTH], 1);
  for (let i = 0; i < cells; i++) {
    const place = (mesh.x[i]! + mesh.x[i + 1]!) / 2;
    heat.enthalpy[i] = enthalpyOf(FREEZING, fromCelsius(700) + swing * Math.cos((Math.PI * place) / LENGTH));
  }
  return { mesh, flow, heat };
}
type Channel = ReturnType<typeof channelWith>;
const energy = ({ flow, heat }: Channel): number =>
  heat.enthalpy.reduce((sum, enthalpy, i) => sum + enthalpy * flow.volume[i]!, 0);

/** What is left of one cosine over the length after a time [s]. */
function decay(time: number): number {
  const alpha = FREEZING.conductivity / (FREEZING.density * FREEZING.liquidHeat);
  return Math.exp((-alpha * Math.PI ** 2 * time) / LENGTH ** 2);
}

describe('conduction along the metal', () => {
  it('wears off a cosine as the heat equation does, exp(−α π² t/L²) (Carslaw & Jaeger, from memory)', () => {
    const given = channelWith(100, 40);
    const time = 10;
    for (let k = 0; k < time / 2e-3; k++) conduct(given.heat, given.flow, given.mesh, 2e-3);
    const left = 40 * decay(time);
    const found = temperatureOf(FREEZING, given.heat.enthalpy[0]!) - fromCelsius(700);
    expect(Math.abs(found / left - 1)).toBeLessThan(1e-3);
  });

  it('does so on a mesh of cells a tenth of a millimetre long', () => {
    const given = channelWith(1000, 40);
    for (let k = 0; k < 1000; k++) conduct(given.heat, given.flow, given.mesh, 2e-3);
    const found = temperatureOf(FREEZING, given.heat.enthalpy[0]!) - fromCelsius(700);
    expect((40 - found) / (40 - 40 * decay(2))).toBeCloseTo(1, 2);
  });

  it('goes on in every step of the heat', () => {
    const given = channelWith(100, 40, 0);
    for (let k = 1; k <= 5000; k++)
      carryHeat(given.heat, given.flow, given.mesh, { sin: 0, cos: 1 }, 2e-3, k * 2e-3);
    const found = temperatureOf(FREEZING, given.heat.enthalpy[0]!) - fromCelsius(700);
    expect(Math.abs(found / (40 * decay(10)) - 1)).toBeLessThan(1e-3);
  });

  it('loses nothing', () => {
    const given = channelWith(60, 40);
    const before = energy(given);
    for (let k = 0; k < 2000; k++) conduct(given.heat, given.flow, given.mesh, 2e-3);
    expect(Math.abs(energy(given) / before - 1)).toBeLessThan(1e-13);
  });

  it('overshoots on no mesh', () => {
    const given = channelWith(2000, 40);
    for (let k = 0; k < 200; k++) conduct(given.heat, given.flow, given.mesh, 2e-3);
    const temperatures = Array.from(given.heat.enthalpy, (enthalpy) => temperatureOf(FREEZING, enthalpy));
    expect(Math.max(...temperatures)).toBeLessThanOrEqual(fromCelsius(740) + 1e-9);
    for (let i = 1; i < 2000; i++) expect(temperatures[i]!).toBeLessThanOrEqual(temperatures[i - 1]! + 1e-9);
  });

  it('keeps a basin open to its die, however fine the mesh', () => {
    const metal = metalNamed('A356')!;
    const section = armBehind({ length: 115, pit: 25, open: 50 });
    const pour = runPour({
      section,
      liquid: liquidOf(metal),
      volume: 0.696 / metal.density.value,
      tilt: steady(20, 15),
      heat: heatPlanOf(metal, section),
      computation: { meshCells: 400, capillaryGate: true, settlingTime: 0 },
    });
    let step = pour.next();
    while (!step.done) step = pour.next(step.value.time > 2.6 ? { stop: true } : undefined);
    expect(step.value.figures.arrivalTime).not.toBeNull();
  });
});
