import { describe, expect, test } from 'vitest';
import { standHeight } from '$src/core/metal/capillarity';
import { fromDegrees } from '$src/core/units';
import {
  basinDepth,
  rubbedMiddle,
  THACKER_PERIOD,
  thackerMiddle,
  thackerSpeed,
} from '$src/verify/exact/basin';
import {
  dressler,
  ritter,
  type State,
  slopeDamBreak,
  stoker,
  stokerMiddle,
} from '$src/verify/exact/damBreak';
import {
  BENCH_FAST,
  BENCH_SLOW,
  boreFroude,
  bumpWithJump,
  chokedDischarge,
  conjugateRatio,
  jumpPlace,
  MACDONALD_LONG,
  type Manufactured,
  manufacturedBed,
  subcriticalBump,
  throatDepth,
  transcriticalBump,
} from '$src/verify/exact/steady';
import { tankPeriod } from '$src/verify/slosh';
import { tiltedTankDepth } from '$src/verify/stillMetal';
import { rampRise, stepRise } from '$src/verify/tankTilt';
import { numbersOf, readTable } from './tables';

/** The tables carry ten significant digits. */
const DIGITS = 2e-9;

function expectSame(found: number, wanted: number, relative = DIGITS, absolute = 1e-12): void {
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * relative + absolute);
}

function eachRow(name: string, look: (row: Record<string, number>) => void): void {
  const rows = numbersOf(readTable(name));
  expect(rows.length).toBeGreaterThan(0);
  rows.forEach(look);
}

describe('the closed forms of the checks agree with the tables', () => {
  test.each([
    ['A03a', (x: number) => ritter(x, 6, 5, 0.005)],
    ['A03b', (x: number) => ritter(x, 0.3, 0.5, 0.05)],
    ['A04a', (x: number) => stoker(x, 6, 5, 0.005, 0.001)],
  ] as [string, (x: number) => State][])('%s: dam breaks', (name, state) =>
    eachRow(name, (row) => {
      expectSame(state(row['x_m']!).depth, row['h_m']!);
      expectSame(state(row['x_m']!).speed, row['u_mps']!);
    }),
  );

  test('A04b: state between fan and bore at any depth ratio', () =>
    eachRow('A04b', (row) => {
      const { depth, speed, bore } = stokerMiddle(1, row['hr_over_hl']!);
      expectSame(depth, row['hm_over_hl']!);
      expectSame(speed / Math.sqrt(9.81), row['um_over_cl']!);
      expectSame(bore / Math.sqrt(9.81), row['S_over_cl']!);
    }));

  test('A05: friction behind the front', () =>
    eachRow('A05', (row) => {
      const { depth, speed } = dressler(row['x_m']!, 40, 1000, 6, 40);
      expectSame(depth, row['h_dressler_m']!, 1e-8);
      expectSame(speed, row['u_dressler_mps']!, 1e-8, 1e-7);
    }));

  test('A06: dam break on a slope', () =>
    eachRow('A06', (row) => {
      const theta = fromDegrees(row['theta_deg']!);
      const { depth, speed } = slopeDamBreak(0, row['t_s']!, 0, 0.02, theta);
      expectSame(depth, row['h_at_s0_m']!);
      expectSame(speed, row['u_at_s0_mps']!);
      expect(slopeDamBreak(row['front_s_m']! * 1.0001, row['t_s']!, 0, 0.02, theta).depth).toBe(0);
    }));

  test('A02: still metal in a tilted tank', () =>
    eachRow('A02', (row) =>
      expectSame(
        tiltedTankDepth(row['s_m']!, fromDegrees(row['theta_deg']!)),
        row['h_normal_m']!,
        1e-8,
        1e-9,
      ),
    ));

  test('A07: swing in a parabolic basin', () =>
    eachRow('A07', (row) => {
      const time = row['t_over_T']! * THACKER_PERIOD;
      expectSame(time, row['t_s']!);
      expectSame(thackerSpeed(time), row['u_wet_mps']!, DIGITS, 1e-9);
      expectSame(basinDepth(0, thackerMiddle(time)), row['h_at_x2.0_m']!, DIGITS, 1e-9);
      expectSame(basinDepth(0.5, thackerMiddle(time)), row['h_at_x2.5_m']!, DIGITS, 1e-9);
    }));

  test('A07b: the same with friction', () =>
    eachRow('A07b', (row) =>
      expectSame(rubbedMiddle(row['t_s']!, 0.8, 0.6), row['X_centre_m']!, DIGITS, 1e-11),
    ));

  test.each([
    ['A08a', subcriticalBump(4.42, 2)],
    ['A08b', transcriticalBump(1.53)],
    ['A08c', bumpWithJump(0.18, 0.33)],
    ['A10a', throatDepth(0.0012, false)],
    ['A10b', throatDepth(chokedDischarge, true)],
  ])('%s: steady streams', (name, depth) =>
    eachRow(name, (row) => expectSame(depth(row['x_m']!), row['h_m']!, 1e-7)),
  );

  test('A08c: place of the jump', () => expectSame(jumpPlace(0.18, 0.33), 11.665618, 1e-7));

  test.each([
    ['A09a', MACDONALD_LONG],
    ['A09b', BENCH_SLOW],
    ['A09c', BENCH_FAST],
  ] as [string, Manufactured][])('%s: channels with a prescribed depth', (name, channel) => {
    const bed = manufacturedBed(channel, 2000);
    eachRow(name, (row) => {
      expectSame(channel.depth(row['x_m']!), row['h_m']!);
      expectSame(bed(row['x_m']!), row['z_m']!, 1e-6, 1e-8);
    });
  });

  test('A11, C03: jumps and bores', () => {
    eachRow('A11', (row) => {
      expectSame(conjugateRatio(row['Fr1']!), row['h2_over_h1']!);
      expectSame(boreFroude(row['h2_over_h1']!), row['Fr1']!);
    });
    eachRow('C03', (row) => expectSame(boreFroude(row['ratio_h2/h1']!), row['bore_Froude']!));
  });

  test('B01: periods of a tank', () =>
    eachRow('B01', (row) => expectSame(tankPeriod(0.4, row['H_m']!, row['n']!), row['T_sw_s']!)));

  test('B03: tank after a sudden tilt, an even turn and a swing', () =>
    eachRow('B03', (row) => {
      const omega = 1.739439737;
      expectSame(stepRise(row['t_s']!), row['eta_wall_step_over_alpha0_m']!, 1e-8);
      expectSame(
        rampRise(row['t_s']!, () => 1),
        row['eta_wall_ramp_over_rate_m_s']!,
        1e-5,
      );
      expectSame(
        rampRise(row['t_s']!, (s) => omega * Math.cos(omega * s)),
        row['eta_wall_sin_over_alpha0_m']!,
        1e-5,
        1e-6,
      );
    }));

  test('C04: height of a puddle', () =>
    eachRow('C04', (row) =>
      expectSame(
        standHeight(row['gamma_Npm']!, row['rho']!, fromDegrees(row['contact_angle_deg']!)),
        row['height_m']!,
      ),
    ));
});
