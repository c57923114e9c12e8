import { Solver } from 'odex';
import { describe, expect, it } from 'vitest';
import { type Body, makeBody, NO_METAL } from '$src/core/tilt/machine/body';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';
import { machineMotion } from '$src/core/tilt/machine/machineMotion';
import { machineWarnings } from '$src/core/tilt/machine/machineWarnings';
import { accelerationAt, bodyAtRest, stepBody } from '$src/core/tilt/machine/stepBody';
import { fromCelsius, fromDegrees, toDegrees } from '$src/core/units';
import { entry, type Table } from '../../../tables/heat/table';
import D06 from '../../../tables/machine/D06_overdamped_arm.json';
import D06b from '../../../tables/machine/D06b_travel_time.json';

/** A point mass on an arm with nothing but the cushion to hold it, which acts everywhere: a linear dashpot. */
function arm(mass: number, radius: number, gyration: number, damping: number): Machine {
  return {
    ...BENCH_MACHINE,
    parts: [{ name: 'arm', mass, at: { x: radius, y: 0 }, gyration }],
    weights: [],
    cylinder: { ...BENCH_MACHINE.cylinder, attachment: { x: 0, y: 0 } },
    bearing: { radius: 0, friction: 0 },
    cushion: { over: 0, damping },
  };
}

/** Inclination after `time` [s], begun at the rate of the arm without inertia, as the table does (k is its m g r/C). */
function inclinationAfter(body: Body, start: number, time: number): number {
  let state = { ...bodyAtRest(body, start, NO_METAL), rate: -D06.parameters.k * Math.cos(start) };
  for (let i = 0; i < 200; i++) state = stepBody(body, state, NO_METAL, time / 200);
  return state.inclination;
}

const dashpot = (mass: number, radius: number, gyration: number): Body => {
  const machine = arm(mass, radius, gyration, 18000);
  // Stop far below and cushion from far above, so that its ramp is within 1e-9 of full over the tilt.
  return { ...makeBody({ ...machine, cushion: { over: 1e10, damping: 18000 } }, -5), stop: -5 };
};

describe('D06 overdamped arm', () => {
  const whole = D06 as unknown as Table;
  /** Inertia 120 kg m² as in the table: m r² is 100, so the gyration adds 20. */
  const body = dashpot(400, 0.5, Math.sqrt(20 / 400));

  it.each(whole.rows.slice(1).map((row) => [entry(whole, row, 't_s'), row] as const))(
    'with inertia after %d s',
    (time, row) => {
      const here = toDegrees(inclinationAfter(body, fromDegrees(60), time));
      expect(Math.abs(here - entry(whole, row, 'phi_with_inertia_I120_deg'))).toBeLessThan(2e-6);
    },
  );

  it('D06b: times of the closed form are met by an arm with the same moment and almost no inertia, 1 kg m²', () => {
    const table = D06b as unknown as Table;
    const light = dashpot(40_000, 0.005, 0);
    for (const row of table.rows) {
      const start = fromDegrees(entry(table, row, 'phi_start_deg'));
      const end = entry(table, row, 'phi_end_deg');
      const here = toDegrees(inclinationAfter(light, start, entry(table, row, 'time_s')));
      expect(Math.abs(here - end)).toBeLessThan(1e-3);
    }
  });
});

describe('the falling body', () => {
  it('without a damper keeps its energy, pivot to stop', () => {
    const machine = { ...arm(40, 0.3, 0.1, 0), valve: { by: 'Kv' as const, kv: 50 } };
    const body = makeBody(machine, fromDegrees(-80));
    let state = bodyAtRest(body, fromDegrees(40), NO_METAL);
    const height = (inclination: number) => 0.3 * Math.sin(inclination);
    while (state.struckAt === null) {
      const kinetic = (body.inertia * state.rate ** 2) / 2;
      const given = 40 * 9.81 * (height(fromDegrees(40)) - height(state.inclination));
      expect(Math.abs(kinetic - given)).toBeLessThan(2e-5 * 40 * 9.81 * 0.3);
      state = stepBody(body, state, NO_METAL, 0.005);
    }
    expect(state.time).toBeGreaterThan(0.3);
  });

  it('gives what gravity gives to damper, bearing, cushion and its own motion', () => {
    const machine = BENCH_MACHINE;
    const { trace, struckAt } = machineMotion({ start: fromDegrees(30), end: fromDegrees(-90), machine });
    const body = makeBody(machine, fromDegrees(-90));
    let work = 0;
    let given = 0;
    for (let i = 1; i < trace.time.length; i++) {
      const turned = trace.inclination[i]! - trace.inclination[i - 1]!;
      const mean = (values: Float64Array) => (values[i]! + values[i - 1]!) / 2;
      work += (mean(trace.damper) + mean(trace.friction) + mean(trace.cushion)) * turned;
      given += mean(trace.gravity) * turned;
    }
    const kept = (body.inertia * (struckAt ?? 0) ** 2) / 2;
    expect(struckAt).not.toBeNull();
    expect(Math.abs(given + work - kept)).toBeLessThan(0.005 * given);
  });

  /** Independent: odex, Hairer's extrapolation code, on the same torques. */
  it('agrees with an ODE solver', () => {
    const body = makeBody({ ...BENCH_MACHINE, bearing: { radius: 0, friction: 0 } }, fromDegrees(-90));
    const solver = new Solver(2);
    solver.absoluteTolerance = 1e-11;
    solver.relativeTolerance = 1e-11;
    const right = (_: number, [a, w]: number[]) => [w!, accelerationAt(body, a!, w!, NO_METAL)];
    const { y } = solver.solve(right, 0, [fromDegrees(30), 0], 2);
    let state = bodyAtRest(body, fromDegrees(30), NO_METAL);
    for (let i = 0; i < 400; i++) state = stepBody(body, state, NO_METAL, 0.005);
    expect(Math.abs(toDegrees(state.inclination - y[0]!))).toBeLessThan(2e-3);
    expect(Math.abs(toDegrees(state.inclination) - 30)).toBeGreaterThan(5);
  });
});

describe('what the machine would do wrong', () => {
  const release = { start: fromDegrees(30), end: fromDegrees(-90), machine: BENCH_MACHINE };
  const warningsOf = (machine: Machine) => {
    const here = { ...release, machine };
    return machineWarnings(here, machineMotion(here).turned, fromDegrees(90));
  };
  const kinds = (machine: Machine) => warningsOf(machine).map(({ kind }) => kind);
  const { valve, cylinder } = BENCH_MACHINE;

  it('nothing, as it stands on the bench', () => expect(kinds(BENCH_MACHINE)).toEqual([]));
  it('will not start', () =>
    expect(kinds({ ...BENCH_MACHINE, bearing: { radius: 0.2, friction: 1 } })).toContain('will not start'));
  it('runs away and strikes the stop', () => {
    const open = kinds({ ...BENCH_MACHINE, valve: { by: 'Kv', kv: 20 }, cushion: { over: 0, damping: 0 } });
    expect(open).toEqual(expect.arrayContaining(['runs away', 'strikes the stop']));
  });
  it('pressure too high', () =>
    expect(kinds({ ...BENCH_MACHINE, highestPressure: 1e4 })).toContain('pressure too high'));
  it('reservoir too small', () =>
    expect(kinds({ ...BENCH_MACHINE, reservoir: 1e-6 })).toContain('reservoir too small'));
  it('cavitates', () =>
    expect(
      kinds({
        ...BENCH_MACHINE,
        line: { diameter: 0.0012, length: 3 },
        oil: { ...BENCH_MACHINE.oil, temperature: fromCelsius(0) },
        valve: { ...valve },
      }),
    ).toContain('cavitates'));
  it('cylinder out of stroke', () =>
    expect(kinds({ ...BENCH_MACHINE, cylinder: { ...cylinder, longest: 0.45 } })).toContain(
      'cylinder out of stroke',
    ));

  /** A damper that holds the weights back carries their torque whatever its valve lets through. */
  it('pressure is lowered by less weight, a wider bore and a longer arm, and hardly by the valve', () => {
    const pressureOf = (change: Partial<Machine>) =>
      machineMotion({ ...release, machine: { ...BENCH_MACHINE, ...change } }).turned;
    const base = pressureOf({});
    const { x, y } = cylinder.attachment;
    const arm = { ...cylinder, attachment: { x: 1.2 * x, y: 1.2 * y } };
    for (const change of [{ weights: [] }, { cylinder: { ...cylinder, bore: 0.04 } }, { cylinder: arm }])
      expect(pressureOf(change).highestPressure).toBeLessThan(0.9 * base.highestPressure);
    if (valve.by !== 'turns') throw new Error('The bench is set by turns.');
    const open = pressureOf({ valve: { ...valve, open: valve.turns } });
    expect(open.highestPressure).toBeGreaterThan(0.95 * base.highestPressure);
    expect(open.fastest).toBeGreaterThan(2 * base.fastest);
    const [told] = warningsOf({ ...BENCH_MACHINE, highestPressure: 1e4 });
    expect(told!.remedy).toMatch(/^Take weight off/);
  });

  it('hangs where weights no longer turn it: weight helps there, and the valve does not', () => {
    const below = { mass: 20, radius: 0.3, angle: fromDegrees(-90) };
    const hanging = { ...BENCH_MACHINE, weights: [below] };
    const [told] = warningsOf(hanging).filter(({ kind }) => kind === 'hangs');
    expect(told!.remedy).toMatch(/^Valve and oil change nothing there/);
    expect(kinds({ ...hanging, valve: { by: 'Kv', kv: 5 } })).toContain('hangs');
    const towardsRoof = { mass: 30, radius: 0.3, angle: fromDegrees(60) };
    expect(kinds({ ...hanging, weights: [below, towardsRoof] })).not.toContain('hangs');
  });

  it('hangs on a valve all but shut: opening it helps', () => {
    if (valve.by !== 'turns') throw new Error('The bench is set by turns.');
    const shut = { ...BENCH_MACHINE, valve: { ...valve, open: 0.1 } };
    const [told] = warningsOf(shut).filter(({ kind }) => kind === 'hangs');
    expect(told!.remedy).toMatch(/^Open the valve/);
    expect(kinds({ ...shut, valve })).not.toContain('hangs');
  });
});
