import { expect, test } from 'vitest';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { dryRun } from '$src/core/tilt/machine/dryRun';
import { machineWarnings } from '$src/core/tilt/machine/machineWarnings';
import { motionOf } from '$src/core/tilt/motionOf';
import { DEFAULT_LIMITS, WIDEST_LIMITS } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import { addStage, asKind, keptOf, removeStage, samplesOf, togglePace } from '$src/ui/tilt/tiltEdits';

const base = { start: fromDegrees(30), smoothing: 0.3, limits: WIDEST_LIMITS };
const staged: Extract<Tilt, { kind: 'staged' }> = {
  ...base,
  kind: 'staged',
  stages: [
    { to: fromDegrees(-6), rate: fromDegrees(8) },
    { to: fromDegrees(-90), time: 5 },
  ],
};
const steady: Tilt = { ...base, kind: 'steady', end: fromDegrees(-90), rate: fromDegrees(15) };

/** Greatest difference of two tilts over their time [rad]. */
function apart(a: Tilt, b: Tilt): number {
  const [one, other] = [motionOf(a), motionOf(b)];
  const times = Array.from({ length: 101 }, (_, index) => (index * one.duration) / 100);
  return Math.max(...times.map((time) => Math.abs(one.inclinationAt(time) - other.inclinationAt(time))));
}

test('steady told in stages is the same turn, and back again', () => {
  expect(apart(steady, asKind(steady, 'staged'))).toBeLessThan(1e-12);
  const back = asKind(asKind(steady, 'staged'), 'steady');
  expect(apart(steady, back)).toBeLessThan(1e-12);
});

test('stages told steadily keep start, end and the time of the turn', () => {
  const one = motionOf(asKind(staged, 'steady'));
  const other = motionOf(staged);
  expect(one.start).toBe(other.start);
  expect(one.end).toBeCloseTo(other.end, 12);
  expect(one.duration).toBeCloseTo(other.duration, 9);
});

test('a stage given by time instead of rate turns the same', () => {
  for (const index of [0, 1]) {
    const toggled = togglePace(staged, index);
    expect(apart(staged, toggled)).toBeLessThan(1e-9);
    expect('rate' in toggled.stages[index]!).toBe(!('rate' in staged.stages[index]!));
  }
});

test('a new stage splits the longest and changes nothing until it is changed', () => {
  const more = addStage(asKind(steady, 'staged') as typeof staged);
  expect(more.stages).toHaveLength(2);
  expect(apart(steady, more)).toBeLessThan(1e-9);
  expect(checkTilt(removeStage(more, 0)).issues).toEqual([]);
});

test('a tilt that stops short goes on to the die on its end, as far as the machine goes; what was typed stays', () => {
  const short: typeof staged = { ...staged, stages: [{ to: fromDegrees(-8), rate: fromDegrees(2) }] };
  expect(addStage(short).stages).toEqual([...short.stages, { to: fromDegrees(-90), rate: fromDegrees(2) }]);
  const limits = { ...WIDEST_LIMITS, lowestEnd: fromDegrees(-60) };
  expect(addStage({ ...short, limits }).stages.at(-1)?.to).toBe(fromDegrees(-60));
});

test('stages that make no sense yet still give finite ones', () => {
  const nonsense: typeof staged = { ...staged, stages: [{ to: fromDegrees(60), time: 0 }] };
  for (const tilt of [addStage(nonsense), togglePace(nonsense, 0), asKind(nonsense, 'steady')]) {
    expect(JSON.stringify(tilt)).not.toContain('null');
  }
});

test('the samples end where the tilt ends', () => {
  const samples = samplesOf(staged);
  expect(samples[0]).toMatchObject({ time: 0, inclination: base.start });
  expect(samples.at(-1)!.inclination).toBeCloseTo(fromDegrees(-90), 12);
});

test('what one kind asks for is there again when one comes back to it', () => {
  const led = { ...asKind(steady, 'front-led'), share: 0.35, homeWithin: 1.5 } as Tilt;
  const kept = keptOf(led, {});
  expect(asKind(asKind(led, 'staged', null, kept), 'front-led', null, kept)).toMatchObject({
    share: 0.35,
    homeWithin: 1.5,
  });
  const machine = asKind(steady, 'machine');
  if (machine.kind !== 'machine') throw new Error(machine.kind);
  const changed = { ...machine, machine: { ...machine.machine, oilVolume: 2e-3 } };
  const both = keptOf(changed, kept);
  expect(asKind(asKind(changed, 'drawn'), 'machine', null, both)).toMatchObject({
    machine: { oilVolume: 2e-3 },
  });
  expect(keptOf(steady, both)).toMatchObject(both);
});

test('coming back to steady or staged brings back what was typed there, from where the body starts now', () => {
  const kept = keptOf(staged, keptOf(steady, {}));
  const led = { ...asKind(steady, 'front-led'), start: fromDegrees(20) } as Tilt;
  expect(asKind(led, 'steady', null, kept)).toEqual({ ...steady, start: fromDegrees(20) });
  expect(asKind(led, 'staged', null, kept)).toEqual({ ...staged, start: fromDegrees(20) });
  const low = { ...led, start: fromDegrees(-10) } as Tilt;
  expect(asKind(low, 'staged', null, kept)).toMatchObject({
    start: fromDegrees(-10),
    stages: [{ to: fromDegrees(-90) }],
  });
  // Between these two the turn itself is carried over.
  expect(asKind(staged, 'steady', null, kept)).not.toMatchObject({ rate: fromDegrees(15) });
});

const measured: Tilt = {
  kind: 'measured',
  start: base.start,
  limits: base.limits,
  origin: 'phone.csv',
  knots: [{ time: 4, inclination: fromDegrees(-90) }],
  band: { count: 3, start: 0.01, time: 0.1, rate: 0.05 },
  readings: { smoothedOver: 0.5, scatter: 0.002, before: 20, after: 20 },
};

test('a measured tilt that is drawn anew no longer says what its readings were', () => {
  const drawn = asKind(measured, 'drawn');
  expect(Object.keys(drawn).toSorted()).toEqual(['kind', 'knots', 'limits', 'origin', 'start']);
});

test('no tilt becomes measured by being called so; one that was measured is there again, readings and all', () => {
  expect(asKind(staged, 'measured')).toBe(staged);
  const kept = keptOf(measured, {});
  const other = asKind(measured, 'drawn', null, kept);
  expect(asKind(other, 'measured', null, keptOf(other, kept))).toEqual(measured);
  const limited = { ...asKind(measured, 'steady', null, kept), limits: DEFAULT_LIMITS };
  expect(asKind(limited, 'measured', null, kept)).toEqual({ ...measured, limits: DEFAULT_LIMITS });
});

test('a tilt first made a machine falls within what a new tilt may do, and no quicker', () => {
  const made = asKind({ ...steady, limits: DEFAULT_LIMITS }, 'machine');
  if (made.kind !== 'machine') throw new Error('It was made a machine.');
  const { turned } = dryRun(made);
  expect(turned.struckAt).not.toBeNull();
  expect(machineWarnings(made, turned, DEFAULT_LIMITS.quickest).map(({ kind }) => kind)).not.toContain(
    'runs away',
  );
});
