import { describe, expect, it } from 'vitest';
import { Flow } from '$src/core/flow/flow';
import { makeHeat } from '$src/core/heat/heat';
import { carry } from '$src/core/heat/transport';
import { buildMesh } from '$src/core/mesh/mesh';
import { fromCelsius } from '$src/core/units';
import { channel, HEAT } from './pourWithHeat';

/** What upwind mixes of heat is given back. Source: exact solution of a profile that is carried along, worked out here. */

const LENGTH = 0.6;
const HEIGHT = 0.01;
const WIDTH = 0.05;
const SPEED = 0.3;
/** From 0.1 to 0.4 m, in one second. */
const TIME = 1;
const PLAN = {
  ...HEAT,
  regions: [{ transfer: 1850, dieTemperature: fromCelsius(350), later: null }],
};

type Profile = (x: number) => number;

const hump: Profile = (x) => 4e5 + 1e5 * Math.exp(-(((x - 0.15) / 0.04) ** 2));
const step: Profile = (x) => (x > 0.1 && x < 0.2 ? 5e5 : 4e5);

/** Mean of the profile over a cell, close enough. */
function meanOver(profile: Profile, from: number, to: number): number {
  let sum = 0;
  for (let k = 0; k < 64; k++) sum += profile(from + ((k + 0.5) / 64) * (to - from));
  return sum / 64;
}

/** A full channel whose metal moves as one, to the right or to the left; mean error of the heat content at the end [J/kg]. */
function carried(cells: number, profile: Profile, direction: 1 | -1 = 1) {
  const mesh = buildMesh(channel(LENGTH, HEIGHT, WIDTH), cells);
  const flow = new Flow(mesh);
  flow.volume.set(mesh.volume);
  flow.depth.fill(HEIGHT);
  flow.flux.fill(direction * SPEED * HEIGHT * WIDTH);
  const heat = makeHeat(PLAN, flow, mesh, [LENGTH], 1);
  const along = (x: number) => (direction > 0 ? x : LENGTH - x);
  const between = (i: number, moved: number) =>
    meanOver((x) => profile(along(x) - moved), mesh.x[i]!, mesh.x[i + 1]!);
  for (let i = 0; i < cells; i++) heat.enthalpy[i] = between(i, 0);
  Object.assign(heat, { entering: profile(-1) });
  const sum = () => heat.enthalpy.reduce((total, h, i) => total + h * mesh.volume[i]!, 0);
  const before = sum();
  const steps = Math.round((TIME * SPEED * cells) / LENGTH / 0.2);
  for (let k = 0; k < steps; k++) carry(heat, flow, mesh, TIME / steps);
  const found = Array.from(heat.enthalpy);
  const error = found.reduce((total, h, i) => total + Math.abs(h - between(i, SPEED * TIME)), 0) / cells;
  return { found, error, kept: sum() / before };
}

describe('a profile of heat that is carried along', () => {
  it('keeps its shape at better than first order, where upwind alone has half the error on twice the mesh', () => {
    const [coarse, middle, fine] = [100, 200, 400].map((cells) => carried(cells, hump).error);
    expect(Math.log2(coarse! / middle!)).toBeGreaterThan(1.3);
    expect(Math.log2(middle! / fine!)).toBeGreaterThan(1.5);
  });

  it('keeps a step within the heat contents it began with, and its heat', () => {
    const { found, kept } = carried(200, step);
    expect(Math.max(...found)).toBeLessThanOrEqual(5e5 * (1 + 1e-12));
    expect(Math.min(...found)).toBeGreaterThanOrEqual(4e5 * (1 - 1e-12));
    expect(kept).toBeCloseTo(1, 12);
  });

  it('does the same to the left', () => {
    const [right, left] = [carried(120, hump, 1).found, carried(120, hump, -1).found.reverse()];
    for (const [i, h] of right.entries()) expect(left[i]! / h).toBeCloseTo(1, 12);
  });
});
