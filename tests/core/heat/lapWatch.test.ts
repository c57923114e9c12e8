import { describe, expect, it } from 'vitest';
import { Flow } from '$src/core/flow/flow';
import { makeHeat } from '$src/core/heat/heat';
import { frontTemperature, watchLaps } from '$src/core/heat/lapWatch';
import { buildMesh } from '$src/core/mesh/mesh';
import { fromCelsius } from '$src/core/units';
import { channel, GOOD_POUR, HEAT, pourWithHeat } from './pourWithHeat';

const LIMIT = HEAT.lapTemperature;

/** A channel of ten cells with metal where marked, at one temperature. */
function filled(marks: readonly number[], temperature: number) {
  const mesh = buildMesh(channel(0.1, 0.01, 0.05), marks.length);
  const flow = new Flow(mesh);
  const put = (cells: readonly number[]) => {
    for (let i = 0; i < mesh.cells; i++) {
      flow.volume[i] = cells[i] ? mesh.volume[i]! : 0;
      flow.depth[i] = cells[i] ? 0.01 : 0;
    }
  };
  put(marks);
  const plan = { ...HEAT, startTemperature: temperature, regions: [HEAT.regions[1]!] };
  const heat = makeHeat(plan, flow, mesh, [0.1], 1);
  return { mesh, flow, heat, put };
}

describe('laps of a pour', () => {
  const MET = [1, 1, 1, 1, 1, 1, 1, 1, 1, 1];

  /** Metal that leaves a gap open for a time [s], then closes it. */
  function closing(marks: readonly number[], temperature: number, lasted: number) {
    const { mesh, flow, heat, put } = filled(marks, temperature);
    const watch = watchLaps(flow, heat, mesh, LIMIT);
    watch.look(0, 0.1);
    watch.look(lasted, 0.1);
    put(MET);
    heat.temperature.fill(temperature);
    heat.solid.fill(0);
    watch.look(lasted + 2e-3, 0.1);
    return watch.laps();
  }

  it.each([
    ['cold', fromCelsius(600), 1],
    ['hot', fromCelsius(650), 0],
  ])('two %s fronts that meet', (_, temperature, count) => {
    const laps = closing([1, 1, 1, 1, 0, 0, 1, 1, 1, 1], temperature, 0.05);
    expect(laps).toHaveLength(count);
    if (count) expect(laps[0]!.place).toBeCloseTo(0.045, 3);
  });

  it.each([
    ['not 20 mm wide', [1, 1, 1, 1, 0, 1, 1, 1, 1, 1], 0.05],
    ['there for under 20 ms', [1, 1, 1, 1, 0, 0, 1, 1, 1, 1], 0.01],
  ])('a gap %s is film that ran dry', (_, marks, lasted) =>
    expect(closing(marks, fromCelsius(600), lasted)).toEqual([]),
  );

  it('a front is as cold as the 10 mm behind it, not as its own mesh cell', () => {
    const { mesh, flow, heat } = filled([1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0], fromCelsius(620));
    heat.temperature[7] = fromCelsius(600);
    heat.temperature[6] = fromCelsius(630);
    expect(frontTemperature(heat, flow, mesh, 0.05)).toBeCloseTo(fromCelsius(615), 6);
  });

  it('a cold front that stops half way is found, and an arrived one is not', () => {
    const { mesh, flow, heat } = filled([1, 1, 1, 1, 1, 0, 0, 0, 0, 0], fromCelsius(600));
    const half = watchLaps(flow, heat, mesh, LIMIT);
    const arrived = watchLaps(flow, heat, mesh, LIMIT);
    for (let k = 0; k < 200; k++) {
      half.look(k * 2e-3, 0.05);
      // Its last mesh cell slopes once it is there, so the front is read a little short of the die end.
      arrived.look(k * 2e-3, k < 5 ? 0.1 : 0.098);
    }
    expect(half.laps().map((lap) => lap.kind)).toEqual(['front stalled cold']);
    expect(arrived.laps()).toEqual([]);
  });

  it('a hot pour into a warm coated die has none', () => {
    let watch: ReturnType<typeof watchLaps> | null = null;
    pourWithHeat({
      ...GOOD_POUR,
      duration: 3,
      look: ({ flow, heat, mesh, time }) => {
        watch ??= watchLaps(flow, heat, mesh, LIMIT);
        let last = mesh.cells - 1;
        while (last > 0 && flow.depth[last]! < 1e-3) last--;
        watch.look(time, mesh.facePlace[last + 1]!);
      },
    });
    expect(watch!.laps()).toEqual([]);
  });
});
