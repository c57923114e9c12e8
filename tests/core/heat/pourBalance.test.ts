import { describe, expect, it } from 'vitest';
import { heatInMetal } from '$src/core/heat/heat';
import { fromDegrees, toCelsius } from '$src/core/units';
import { flushSection, GOOD_POUR, HEAT, pourWithHeat, spillingSection } from './pourWithHeat';

/** Bar of the design: heat of a whole pour, losses and spilled metal counted, to this share of what was poured. */
const BAR = 1e-9;

describe('heat of a whole pour', () => {
  it.each([
    ['uphill start, 100 mesh cells', GOOD_POUR],
    ['200 mesh cells', { ...GOOD_POUR, meshCells: 200, duration: 4 }],
    ['quick, 60°/s', { ...GOOD_POUR, rate: fromDegrees(60), duration: 3 }],
    [
      'four cavities',
      { ...GOOD_POUR, section: flushSection(0.06, 4), volume: 4 * GOOD_POUR.volume, duration: 4 },
    ],
    ['turned past upright, to −110°', { ...GOOD_POUR, endAngle: fromDegrees(-110), duration: 10 }],
    ['die surface that warms', { ...GOOD_POUR, heat: { ...HEAT, dieSurface: 40e3 }, duration: 4 }],
  ])('is kept: %s', (_, settings) => {
    const pour = pourWithHeat(settings);
    expect(pour.balance).toBeLessThan(BAR);
    expect(pour.heat.lost).toBeGreaterThan(0.05 * pour.start);
    const byRegion = pour.heat.lostByRegion.reduce((sum, lost) => sum + lost, 0);
    expect(Math.abs(byRegion / pour.heat.lost - 1)).toBeLessThan(1e-12);
  });

  it('spilled metal takes its heat with it', () => {
    const { flow, heat, start, balance } = pourWithHeat({ ...GOOD_POUR, section: spillingSection() });
    expect(balance).toBeLessThan(BAR);
    expect(flow.spilled).toBeGreaterThan(0.01 * GOOD_POUR.volume);
    expect(heat.spilled / start).toBeGreaterThan(0.5 * (flow.spilled / GOOD_POUR.volume));
    expect(heat.spilled / start).toBeLessThan(flow.spilled / GOOD_POUR.volume);
  });

  it('metal of one temperature keeps it through a whole pour when nothing is lost', () => {
    const sealed = { transfer: 1e-300, dieTemperature: HEAT.regions[0]!.dieTemperature, later: null };
    let worst = 0;
    const pour = pourWithHeat({
      ...GOOD_POUR,
      heat: { ...HEAT, regions: [sealed, sealed] },
      duration: 5,
      look: ({ heat }) => {
        for (const t of heat.temperature)
          if (t > 0) worst = Math.max(worst, Math.abs(t - HEAT.startTemperature));
      },
    });
    expect(worst).toBeLessThan(1e-6);
    expect(
      Math.abs(heatInMetal(pour.heat, pour.flow) + pour.heat.spilled - pour.start) / pour.start,
    ).toBeLessThan(1e-12);
  });

  it('metal stays between the hottest it was and the coldest die, and the front comes cell by cell', () => {
    const { heat, mesh } = pourWithHeat({
      ...GOOD_POUR,
      duration: 5,
      look: ({ heat: now }) => {
        for (const t of now.temperature) {
          if (t > HEAT.startTemperature + 1e-6) throw new Error(`metal at ${toCelsius(t)} °C`);
          if (t < HEAT.regions[0]!.dieTemperature - 1e-6) throw new Error(`metal at ${toCelsius(t)} °C`);
        }
      },
    });
    const inDie = Array.from(heat.firstContact.slice(mesh.mouthFace));
    expect(inDie[0]).toBeGreaterThan(0);
    expect(heat.firstContact[0]).toBe(0);
    expect(inDie.at(-1)).toBeGreaterThan(1);
    expect(inDie.every((time, k) => k === 0 || time >= inDie[k - 1]!)).toBe(true);
    expect(heat.fullTime[mesh.cells - 1]!).toBeGreaterThan(heat.firstContact[mesh.cells - 1]!);
  });

  it('a finer mesh moves the temperature of the arriving front by little', () => {
    const arriving = [100, 200].map((meshCells) => {
      let temperature = Number.NaN;
      pourWithHeat({
        ...GOOD_POUR,
        meshCells,
        duration: 2.2,
        look: ({ heat, mesh }) => {
          const last = mesh.cells - 1;
          if (Number.isNaN(temperature) && heat.firstContact[last]! >= 0)
            temperature = heat.temperature[last]!;
        },
      });
      return temperature;
    });
    expect(Math.abs(arriving[1]! - arriving[0]!)).toBeLessThan(4);
  });

  it('loses heat to the same walls past upright as before: full cells know no up and down', () => {
    const ended = [-90, -110].map((end) => {
      const times: number[] = [];
      const pour = pourWithHeat({
        ...GOOD_POUR,
        rate: fromDegrees(40),
        endAngle: fromDegrees(end),
        duration: 8,
        look: ({ time, heat }) => {
          if (time > 6 && times.length === 0) times.push(heat.lost);
        },
      });
      return pour.heat.lost - times[0]!;
    });
    expect(Math.abs(ended[1]! / ended[0]! - 1)).toBeLessThan(0.05);
  });
});
