import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { totalVolume } from '$src/core/flow/flow';
import { highestLevel, lowestLevel } from '$src/core/mesh/levels';
import type { PourPlan } from '$src/core/pour/plan';
import type { PourRecord } from '$src/core/pour/record';
import { runPour } from '$src/core/pour/runPour';
import type { Section } from '$src/core/section/section';
import { type CaseRun, fillDepth, fillLevel, runTo, setSpeed, startCase } from '$src/verify/caseRun';
import { channelSection } from '$src/verify/channel';
import { greatestSpeed, settleDepths } from '$src/verify/measure';
import { inclinations, plans, sections, tries } from './randomPours';

function compute(plan: PourPlan): PourRecord {
  const steps = runPour(plan);
  let next = steps.next();
  while (!next.done) next = steps.next();
  return next.value;
}

const allFinite = (values: ArrayLike<number>): boolean => Array.prototype.every.call(values, Number.isFinite);
const rises = (values: Float64Array): boolean =>
  values.every((value, k) => k === 0 || value >= values[k - 1]!);

/** All that must be true of any record. */
function expectSound(record: PourRecord): void {
  const { series, frames, outline, health, figures, frontSpeeds, outcome } = record;
  expect(outcome.kind === 'stopped' ? outcome.reason : '').toBe('');
  expect(health.volumeDrift).toBeLessThanOrEqual(1e-12);
  for (const values of [
    series.time,
    series.inclination,
    series.front,
    series.filledShare,
    series.spilled,
    series.skinFolded,
  ]) {
    expect(values.length).toBe(series.time.length);
    expect(allFinite(values)).toBe(true);
  }
  expect(rises(series.time) && rises(series.spilled) && rises(series.skinFolded)).toBe(true);
  expect(Math.max(...series.filledShare)).toBeLessThanOrEqual(1 + 1e-12);
  expect(Math.min(...series.filledShare)).toBeGreaterThanOrEqual(0);
  expect(frontSpeeds.speed.every((speed) => speed > 0)).toBe(true);
  expect(figures.spilled).toBeLessThanOrEqual(record.plan.volume * (1 + 1e-9));
  expect(allFinite(frames.depth.data) && allFinite(frames.speed.data)).toBe(true);
  const [count, cells] = frames.depth.shape;
  expect(count).toBe(frames.time.length);
  for (let i = 0; i < cells; i++) {
    // Opening under a real roof; the records keep single precision.
    const room = outline.open[i]
      ? Number.POSITIVE_INFINITY
      : (outline.roofLeft[i]! - outline.floorLeft[i]! + outline.roofRight[i]! - outline.floorRight[i]!) / 2;
    for (let k = 0; k < count; k++) {
      const depth = frames.depth.data[k * cells + i]!;
      if (!(depth >= 0 && depth <= room * (1 + 1e-6)))
        expect.fail(`depth ${depth} in cell ${i} of frame ${k}, room ${room}`);
    }
  }
  for (const fold of record.folds) {
    expect(
      allFinite([
        fold.time,
        fold.place,
        fold.inclination,
        fold.severity.value,
        ...Object.values(fold.details),
      ]),
    ).toBe(true);
    expect(fold.cause.length * fold.cure.length).toBeGreaterThan(0);
  }
}

describe('any pour', () => {
  test('keeps its volume, stays between floor and roof, and leaves a sound record', () => {
    fc.assert(
      fc.property(plans, (plan) => expectSound(compute(plan))),
      tries(30),
    );
  });

  test('gives the same bytes twice', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        expect(compute(plan)).toEqual(compute(plan));
      }),
      tries(3),
    );
  });
});

/** Without openings: metal over a rim would rightly leave. */
const closed = sections.map((section) => ({ ...section, openings: [] }));

test('still metal stays still in any section at any inclination', () => {
  fc.assert(
    fc.property(
      closed,
      inclinations,
      fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      fc.integer({ min: 15, max: 150 }),
      (section, inclination, share, meshCells) => {
        const run = startCase({ section, meshCells, inclination });
        const low = lowestLevel(run.flow.levels);
        const high = highestLevel(run.flow.levels);
        fillLevel(run, () => low + share * (high - low));
        const before = totalVolume(run.flow);
        runTo(run, 0.05, () => expect(greatestSpeed(run)).toBeLessThanOrEqual(1e-10));
        expect(Math.abs(totalVolume(run.flow) / before - 1)).toBeLessThanOrEqual(1e-12);
      },
    ),
    tries(150),
  );
});

const LENGTH = 0.3;

/** The section seen in a mirror: the end wall where the back wall was. */
function mirrored(section: Section): Section {
  const turn = (line: Section['floor']) => [...line].reverse().map(({ x, y }) => ({ x: LENGTH - x, y }));
  const [region] = section.regions;
  const regions = [{ ...region!, width: region!.widthAtEnd!, widthAtEnd: region!.width }];
  return { ...section, floor: turn(section.floor), roof: turn(section.roof), regions, mouth: 0 };
}

const waves = fc.record({
  amplitude: fc.double({ min: 0.005, max: 0.03, noNaN: true }),
  bed: fc.double({ min: 0, max: 0.02, noNaN: true }),
  phase: fc.double({ min: 0, max: 6, noNaN: true }),
  speed: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  tilt: fc.double({ min: -0.15, max: 0.15, noNaN: true }),
  cells: fc.integer({ min: 20, max: 80 }),
  taper: fc.oneof(fc.constant(1), fc.double({ min: 0.3, max: 3, noNaN: true })),
});

interface Wave {
  readonly amplitude: number;
  readonly bed: number;
  readonly phase: number;
  readonly speed: number;
  readonly tilt: number;
  readonly cells: number;
  /** Width at the end of the tank over that where it begins. */
  readonly taper: number;
}

/** A tank of waves over an uneven floor, wet everywhere, its lengths scaled. */
function tank(wave: Wave, scale: number, isMirrored: boolean): CaseRun {
  const length = LENGTH * scale;
  const side = (x: number) => (isMirrored ? length - x : x) / scale;
  const plain = channelSection({
    length: LENGTH,
    cells: wave.cells,
    bed: (x) => wave.bed * Math.sin(20 * x + wave.phase),
    roof: 0.4,
  });
  const tapering = { ...plain, regions: [{ name: 'all', end: LENGTH, width: 1, widthAtEnd: wave.taper }] };
  const turned = isMirrored ? mirrored(tapering) : tapering;
  const grown = (line: Section['floor']) => line.map(({ x, y }) => ({ x: x * scale, y: y * scale }));
  const section = {
    ...turned,
    floor: grown(turned.floor),
    roof: grown(turned.roof),
    regions: turned.regions.map((region) => ({ ...region, end: length })),
  };
  const run = startCase({
    section,
    meshCells: wave.cells,
    inclination: isMirrored ? -wave.tilt : wave.tilt,
    longestStep: 1e-3 * Math.sqrt(scale),
  });
  fillDepth(run, (x) => scale * (0.1 + wave.amplitude * Math.sin(9 * side(x) + wave.phase)));
  setSpeed(
    run,
    (x) => (isMirrored ? -1 : 1) * Math.sqrt(scale) * wave.speed * Math.sin((Math.PI * side(x)) / LENGTH),
  );
  return run;
}

test('a pour in the mirror is the mirror of the pour', () => {
  fc.assert(
    fc.property(waves, (wave) => {
      const [plain, mirror] = [tank(wave, 1, false), tank(wave, 1, true)];
      for (const run of [plain, mirror]) {
        runTo(run, 0.2);
        settleDepths(run);
      }
      const reversed = [...mirror.flow.depth].reverse();
      const off = plain.flow.depth.map((depth, i) => Math.abs(depth - reversed[i]!));
      expect(Math.max(...off)).toBeLessThanOrEqual(1e-9);
    }),
    tries(60),
  );
});

test('lengths four times as great take twice the time: Froude’s law', () => {
  fc.assert(
    fc.property(waves, (wave) => {
      const [small, large] = [tank(wave, 1, false), tank(wave, 4, false)];
      runTo(small, 0.2);
      runTo(large, 0.4);
      for (const run of [small, large]) settleDepths(run);
      const off = small.flow.depth.map((depth, i) => Math.abs(4 * depth - large.flow.depth[i]!));
      expect(Math.max(...off)).toBeLessThanOrEqual(1e-6);
    }),
    tries(60),
  );
});
