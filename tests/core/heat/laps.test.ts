import { describe, expect, it } from 'vitest';
import { Flow } from '$src/core/flow/flow';
import { holdFactor, setFrontHolds } from '$src/core/heat/frontHold';
import { makeHeat } from '$src/core/heat/heat';
import {
  closedGaps,
  freshStall,
  type Lap,
  lapWhereFrontsMeet,
  STALL_TIME,
  watchStall,
} from '$src/core/heat/laps';
import { buildMesh } from '$src/core/mesh/mesh';
import { fromCelsius } from '$src/core/units';
import { channel, HEAT } from './pourWithHeat';

const LIMIT = fromCelsius(613);

describe('a front that freezes', () => {
  /** 0.25 for A356 is assumed; stops at coherency: Flemings, from memory. */
  it('runs freely, slows and stops at the coherency fraction', () => {
    expect(holdFactor(0, 0.25)).toBe(1);
    expect(holdFactor(0.19, 0.25)).toBe(1);
    expect(holdFactor(0.225, 0.25)).toBeCloseTo(0.5, 12);
    expect(holdFactor(0.25, 0.25)).toBe(0);
    expect(holdFactor(1, 0.25)).toBe(0);
  });

  it('holds the face ahead of it and no other', () => {
    const mesh = buildMesh(channel(0.1, 0.01, 0.05), 5);
    const flow = new Flow(mesh);
    for (let i = 0; i < 3; i++) {
      flow.volume[i] = mesh.volume[i]!;
      flow.depth[i] = 0.01;
    }
    const plan = { ...HEAT, regions: [HEAT.regions[1]!] };
    const heat = makeHeat(plan, flow, mesh, [0.1], 1);
    heat.solid[2] = 0.3;
    heat.hasSolid = true;
    const holds = new Float64Array(6);
    setFrontHolds(holds, heat, flow, mesh);
    expect(Array.from(holds)).toEqual([1, 1, 1, 0, 1, 1]);
    heat.solid[1] = 0.3;
    setFrontHolds(holds, heat, flow, mesh);
    expect(Array.from(holds)).toEqual([1, 1, 0, 0, 1, 1]);
  });
});

describe('laps', () => {
  it('are where fronts meet and the colder is too cold', () => {
    expect(lapWhereFrontsMeet(2, 0.1, [fromCelsius(640), fromCelsius(620)], LIMIT)).toBeNull();
    expect(lapWhereFrontsMeet(2, 0.1, [fromCelsius(640), fromCelsius(600)], LIMIT)).toEqual({
      kind: 'fronts met cold',
      time: 2,
      place: 0.1,
      temperature: fromCelsius(600),
    });
  });

  it.each([
    ['a gap closes', [1, 1, 0, 0, 1], [1, 1, 1, 1, 1], [2]],
    ['a gap narrows', [1, 0, 0, 0, 1], [1, 1, 0, 1, 1], []],
    ['a front arrives at the end', [1, 1, 1, 0, 0], [1, 1, 1, 1, 1], []],
    ['two gaps close', [1, 0, 1, 0, 1], [1, 1, 1, 1, 1], [1, 3]],
    ['metal comes to a dry start', [0, 0, 1, 1, 1], [1, 1, 1, 1, 1], []],
  ])('meeting places: %s', (_, before, now, expected) =>
    expect(closedGaps(Uint8Array.from(before), Uint8Array.from(now))).toEqual(expected),
  );

  /** A front that runs at 0.2 m/s, stands from 0.5 to 1.0 s and runs on, at one temperature. */
  function stalls(temperature: number): Lap[] {
    let stall = freshStall;
    const laps: Lap[] = [];
    for (let k = 0; k <= 750; k++) {
      const time = k * 2e-3;
      const place = 0.2 * (time < 0.5 ? time : time < 1 ? 0.5 : time - 0.5);
      const look = watchStall(stall, time, place, temperature, LIMIT);
      stall = look.stall;
      if (look.lap) laps.push(look.lap);
    }
    return laps;
  }

  it('are where a front stands still below the temperature, once for each stand', () => {
    const laps = stalls(fromCelsius(600));
    expect(laps).toHaveLength(1);
    expect(laps[0]!.place).toBeCloseTo(0.1, 2);
    expect(laps[0]!.time).toBeGreaterThan(0.5 + STALL_TIME - 0.02);
    expect(laps[0]!.time).toBeLessThan(0.5 + STALL_TIME + 0.02);
    expect(stalls(fromCelsius(640))).toEqual([]);
  });
});
