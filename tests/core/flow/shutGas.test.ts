import { describe, expect, it } from 'vitest';
import { ATMOSPHERE, makeGas } from '$src/core/flow/gas';
import { GRAVITY } from '$src/core/gravity';
import type { Section } from '$src/core/section/section';
import { fromDegrees } from '$src/core/units';
import { type CaseRun, fillLevel, runTo, startCase } from '$src/verify/caseRun';

const DENSITY = 2400;

/** A deep basin before a low die that climbs away from it: metal over the mouth shuts the die's gas in. */
const DIVING: Section = {
  floor: [
    { x: 0, y: 0 },
    { x: 0.3, y: 0 },
  ],
  roof: [
    { x: 0, y: 0.25 },
    { x: 0.1, y: 0.25 },
    { x: 0.1, y: 0.02 },
    { x: 0.3, y: 0.02 },
  ],
  openings: [{ wall: 'roof', from: 0, to: 1 }],
  regions: [
    { name: 'basin', end: 0.1, width: 0.06 },
    { name: 'casting', end: 0.3, width: 0.06 },
  ],
  mouth: 0.1,
  cavities: 1,
  pivot: { x: 0.1, y: 0 },
  vents: [],
};

/** Metal stands in the basin up to a level [m], the die is empty: it is let go at 0 s. */
function begun(meshCells: number, ventArea: number, longestStep: number, level = 0.2): CaseRun {
  const run = startCase({
    section: DIVING,
    meshCells,
    inclination: fromDegrees(10),
    conditions: { friction: { kind: 'metal' }, start: { kind: 'closed' }, end: { kind: 'closed' } },
    longestStep,
  });
  const vents = ventArea > 0 ? [{ cell: meshCells - 1, area: ventArea }] : [];
  run.flow.gas = makeGas(run.mesh, vents, DENSITY, GRAVITY);
  fillLevel(run, (x) => (x < 0.1 ? level : -1));
  return run;
}

const firstOfDie = ({ mesh }: CaseRun): number => mesh.open.lastIndexOf(1) + 1;

function gasVolume({ mesh, flow }: CaseRun, from: number): number {
  let free = 0;
  for (let i = from; i < mesh.cells; i++) free += mesh.volume[i]! - flow.volume[i]!;
  return free;
}

/** Back pressure of the gas [Pa] by its head in the last cell, which stays empty. */
const pressureOf = ({ flow, mesh }: CaseRun): number => flow.gas!.head[mesh.cells - 1]! * DENSITY * GRAVITY;

/** Greatest back pressure of the first 0.3 s [Pa]. */
function firstPeak(run: CaseRun): number {
  let peak = 0;
  runTo(run, 0.3, (now) => {
    peak = Math.max(peak, pressureOf(now));
  });
  return peak;
}

// Source: Boyle's law and hydrostatics, any textbook of physics.
describe('gas shut in by metal that stands over the mouth', () => {
  it.each([60, 120])(
    'is pressed as Boyle has it, and bears the metal that stands higher (%d cells)',
    (cells) => {
      const run = begun(cells, 0, 1e-3);
      const first = firstOfDie(run);
      const before = gasVolume(run, first);
      runTo(run, 6);
      const pressure = pressureOf(run);
      expect(pressure).toBeGreaterThan(2000);
      expect(pressure / (ATMOSPHERE * (before / gasVolume(run, first) - 1))).toBeCloseTo(1, 2);
      const { flow, mesh } = run;
      const wet = flow.volume.findLastIndex((volume, i) => i >= first && volume > 0.01 * mesh.volume[i]!);
      const surface = flow.level[wet]! - flow.gas!.head[wet]!;
      expect((flow.level[0]! - surface) * DENSITY * GRAVITY).toBeCloseTo(pressure, -2);
    },
  );

  it('swings no higher at steps of 1 ms than at 0.1 ms', () => {
    const coarse = firstPeak(begun(60, 0, 1e-3));
    const fine = firstPeak(begun(60, 0, 1e-4));
    expect(coarse / fine).toBeGreaterThan(0.8);
    expect(coarse / fine).toBeLessThan(1.05);
  });

  it('leaves by an open vent until nothing presses it', () => {
    const run = begun(60, 20e-6, 1e-3);
    runTo(run, 6);
    expect(Math.abs(pressureOf(run))).toBeLessThan(5);
    expect(gasVolume(run, firstOfDie(run))).toBeLessThan(0.6 * 0.2 * 0.02 * 0.06);
  });

  it('comes back in by the vent when metal runs out of the die again', () => {
    const run = begun(60, 20e-6, 1e-3, 0.065);
    runTo(run, 6);
    const volume = gasVolume(run, firstOfDie(run));
    expect(volume).toBeGreaterThan(30e-6);
    for (let i = 0; i < firstOfDie(run); i++) run.flow.volume[i] = run.flow.volume[i]! * 0.85;
    let thinnest = 0;
    runTo(run, 7, (now) => {
      thinnest = Math.min(thinnest, pressureOf(now));
    });
    expect(thinnest).toBeLessThan(-5);
    expect(thinnest).toBeGreaterThan(-2000);
    runTo(run, 12);
    expect(Math.abs(pressureOf(run))).toBeLessThan(5);
    expect(gasVolume(run, firstOfDie(run))).toBeGreaterThan(1.05 * volume);
  });
});
