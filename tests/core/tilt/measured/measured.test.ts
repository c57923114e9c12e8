import { describe, expect, it } from 'vitest';
import { checkKnots } from '$src/core/tilt/checkKnots';
import { knotMotion } from '$src/core/tilt/knotMotion';
import { type Readings, readRows } from '$src/core/tilt/measured/readRows';
import { repeatsOf } from '$src/core/tilt/measured/repeats';
import { leastSmoothing, smoothingFor } from '$src/core/tilt/measured/smoothingFor';
import { looksReversed, PLAIN_TREATMENT, treatReadings } from '$src/core/tilt/measured/treatReadings';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import { fromDegrees, toDegrees } from '$src/core/units';

function read(text: string): Readings {
  const result = readRows(text);
  if ('issues' in result) throw new Error(result.issues[0]!.message);
  return result;
}

/** +30° to −90° in 4 s, half a cosine, at rest a second before and after; 50 readings a second. */
const truth = (t: number): number =>
  30 - 60 * (1 - Math.cos(Math.PI * Math.min(Math.max((t - 1) / 4, 0), 1)));
const times = Array.from({ length: 301 }, (_, i) => i * 0.02);
/** Noise without chance: two sines of no common period. */
const noise = (t: number): number => 0.2 * Math.sin(977 * t) + 0.2 * Math.sin(613 * t + 1);

describe('reading a file', () => {
  it.each([
    ['points and commas', (t: number, a: number) => `${t.toFixed(3)},${a.toFixed(3)}`, 'time,angle'],
    [
      'decimal commas',
      (t: number, a: number) => `${t.toFixed(3)};${a.toFixed(3)}`.replaceAll('.', ','),
      't (s);Winkel (°)',
    ],
    ['milliseconds', (t: number, a: number) => `${Math.round(t / 0.001)}\t${a.toFixed(3)}`, 'time_ms\tpitch'],
    ['radians', (t: number, a: number) => `${t.toFixed(3)} ${fromDegrees(a).toFixed(6)}`, 't angle'],
    ['no header', (t: number, a: number) => `${t.toFixed(3)} ${a.toFixed(3)}`, null],
    ['angle first', (t: number, a: number) => `${a.toFixed(3)};${t.toFixed(3)}`, 'incl;time'],
  ])('%s', (_, line, header) => {
    const { rows, wrongRows } = read(
      [...(header ? [header] : []), ...times.map((t) => line(t, truth(t)))].join('\n'),
    );
    expect(wrongRows).toEqual([]);
    expect(rows).toHaveLength(times.length);
    for (const [i, { time, angle }] of rows.entries()) {
      expect(time).toBeCloseTo(times[i]!, 3);
      expect(Math.abs(toDegrees(angle) - truth(times[i]!))).toBeLessThan(1e-3);
    }
  });

  it('names the rows it leaves out', () => {
    const { rows, wrongRows } = read('t,angle\n0,30\n1,abc\n2,20\n1.5,19\n3,10\n4,\n5,5\n');
    expect(rows).toHaveLength(4);
    expect(wrongRows.map(({ path }) => path)).toEqual(['line 3', 'line 5', 'line 7']);
  });

  it.each(['', 'hello', '1,2\n3,4'])('refuses %j', (text) => expect(readRows(text)).toHaveProperty('issues'));
});

describe('readings to a tilt', () => {
  const readings = (of: (t: number) => number) => times.map((t) => ({ time: t, angle: fromDegrees(of(t)) }));

  it('finds the turn in noisy, shifted, reversed, late readings', () => {
    const wrong = readings((t) => -truth(t - 0.1) + 7 + noise(t));
    expect(looksReversed(wrong)).toBe(true);
    const treated = treatReadings(wrong, {
      ...PLAIN_TREATMENT,
      reversed: true,
      zero: fromDegrees(7),
      lag: 0.1,
      smoothing: 0.3,
    });
    const motion = knotMotion(treated);
    // It begins where the noise lets go, at most 0.5° late, so compare by the time of passing level.
    const passing = (angleAt: (t: number) => number) => times.find((t) => angleAt(t) < 0)!;
    expect(Math.abs(toDegrees(motion.start) - 30)).toBeLessThan(0.6);
    expect(Math.abs(toDegrees(motion.end) + 90)).toBeLessThan(0.6);
    expect(motion.duration).toBeGreaterThan(3.4);
    expect(motion.duration).toBeLessThan(4.2);
    const level = passing((t) => toDegrees(motion.inclinationAt(t)));
    const rate = toDegrees(motion.rateAt(level));
    expect(Math.abs(rate + 60 * (Math.PI / 4) * Math.sin(Math.PI / 3))).toBeLessThan(3);
    expect(treated.noise!).toBeGreaterThan(fromDegrees(0.1));
    expect(treated.noise!).toBeLessThan(fromDegrees(0.3));
    expect(checkKnots({ kind: 'measured', limits: WIDEST_LIMITS, origin: '', ...treated })).toEqual([]);
  });

  it('smoothing leaves a parabola as it is', () => {
    const parabola = readings((t) => 30 - 3 * t * t);
    const { noise: left } = treatReadings(parabola, { ...PLAIN_TREATMENT, smoothing: 0.4 });
    expect(left).toBeLessThan(1e-10);
  });

  it('names a gap', () => {
    const gappy = readings(truth).filter(({ time }) => time < 2 || time > 2.5);
    expect(treatReadings(gappy, PLAIN_TREATMENT).notes).toHaveLength(1);
  });

  it.each([90, -90, 180])('is the same tilt read off a face at %d°, where the count may jump', (face) => {
    const wrapped = (degrees: number) => degrees - 360 * Math.round(degrees / 360);
    const other = readings((t) => wrapped(truth(t) + face));
    const plain = treatReadings(readings(truth), PLAIN_TREATMENT);
    const treated = treatReadings(other, { ...PLAIN_TREATMENT, face: fromDegrees(face) });
    expect(treated.start).toBeCloseTo(plain.start, 9);
    for (const [i, knot] of treated.knots.entries())
      expect(knot.inclination).toBeCloseTo(plain.knots[i]!.inclination, 6);
  });
});

describe('repeats', () => {
  /** A tilt from `start` to −90° in `time`. */
  const repeat = (start: number, time: number) => ({
    start: fromDegrees(start),
    knots: [{ time, inclination: fromDegrees(-90) }],
    noise: 0,
    readings: { smoothedOver: 0.2, scatter: 0, before: 1, after: 1 },
    notes: [],
  });

  it('gives standard deviations of a sample and the typical repeat', () => {
    const { typical, index, band } = repeatsOf([repeat(30, 5), repeat(31, 4), repeat(29, 6)]);
    expect(index).toBe(0);
    expect(typical.knots[0]!.time).toBe(5);
    expect(band!.count).toBe(3);
    expect(toDegrees(band!.start)).toBeCloseTo(1, 12);
    expect(band!.time).toBeCloseTo(1, 12);
    const rates = [120 / 5, 121 / 4, 119 / 6];
    const mean = (rates[0]! + rates[1]! + rates[2]!) / 3;
    const variance = rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0) / 2;
    expect(toDegrees(band!.rate)).toBeCloseTo(Math.sqrt(variance), 9);
  });

  it('of one tilt are no band', () => expect(repeatsOf([repeat(30, 5)]).band).toBeNull());
});

/** Numbers spread as a bell, from a fixed seed. */
function bellFrom(seed: number): () => number {
  let state = seed;
  const even = () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}

describe('how long readings are smoothed over', () => {
  const SEEDS = [1, 2, 3, 4, 5, 6];
  /** A turn of 120° in so many seconds, half a second of rest on either side. */
  const turnOver = (seconds: number, t: number): number => {
    const share = Math.min(1, Math.max(0, (t - 0.5) / seconds));
    return 30 - 120 * share ** 2 * (3 - 2 * share);
  };
  const film = (step: number, noise: number, seed: number, seconds = 5) => {
    const bell = bellFrom(seed);
    return Array.from({ length: Math.round((seconds + 1) / step) + 1 }, (_, i) => ({
      time: i * step,
      angle: fromDegrees(turnOver(seconds, i * step) + noise * bell()),
    }));
  };
  /** How far the rate of the turn is off [°/s], root mean square, when it is set against the true one at its best. */
  const rateOff = (rows: ReturnType<typeof film>, smoothing: number): number => {
    const motion = knotMotion(treatReadings(rows, { ...PLAIN_TREATMENT, smoothing }));
    const off = (late: number) => {
      const all = Array.from({ length: 99 }, (_, i) => {
        const t = (5 * (i + 1)) / 100;
        const rate = (turnOver(5, 0.5 + t + 0.01) - turnOver(5, 0.5 + t - 0.01)) / 0.02;
        return (toDegrees(motion.rateAt(t + late)) - rate) ** 2;
      });
      return Math.sqrt(all.reduce((sum, one) => sum + one, 0) / all.length);
    };
    return Math.min(...Array.from({ length: 41 }, (_, k) => off((k - 20) / 50)));
  };

  it('spans five readings of a film, whose noise is then seen and kept out of the rate', () => {
    for (const seed of SEEDS) {
      const rows = film(0.25, 0.8, seed);
      expect(rows).toHaveLength(25);
      const over = smoothingFor(rows);
      expect(over).toBeGreaterThanOrEqual(1);
      const { noise, readings } = treatReadings(rows, { ...PLAIN_TREATMENT, smoothing: over });
      expect(toDegrees(noise!)).toBeGreaterThan(0.3);
      expect(toDegrees(readings.scatter)).toBeGreaterThan(0.4);
      expect(toDegrees(readings.scatter)).toBeLessThan(1.4);
    }
    const off = (smoothing: (rows: ReturnType<typeof film>) => number) =>
      SEEDS.reduce((sum, seed) => sum + rateOff(film(0.25, 0.8, seed), smoothing(film(0.25, 0.8, seed))), 0);
    expect(off(smoothingFor)).toBeLessThan(0.5 * off(() => 0.2));
  });

  it('follows the noise, and not a long rest', () => {
    for (const seed of SEEDS) {
      const [still, some, much] = [0, 0.1, 0.8].map((noise) => smoothingFor(film(0.02, noise, seed)));
      expect(still).toBeLessThanOrEqual(0.25);
      expect(some).toBeGreaterThan(still!);
      expect(much).toBeGreaterThan(some!);
      const rested = film(0.02, 0.1, seed, 3);
      const bell = bellFrom(seed + 50);
      const minute = Array.from({ length: 3000 }, (_, i) => ({
        time: i / 50 - 60,
        angle: fromDegrees(30 + 0.1 * bell()),
      }));
      expect(smoothingFor([...minute, ...rested])).toBeLessThan(1.5);
    }
  });

  it('is the same for a count that jumps, and no wait for the longest file', () => {
    const rows = film(0.02, 0.3, 1);
    const jumping = rows.map(({ time, angle }) => ({
      time,
      angle: Math.atan2(Math.sin(angle - 2), Math.cos(angle - 2)),
    }));
    expect(smoothingFor(jumping)).toBe(smoothingFor(rows));
    const long = Array.from({ length: 20_000 }, (_, i) => ({
      time: i / 100,
      angle: fromDegrees(30 - i / 200),
    }));
    const begun = performance.now();
    smoothingFor(long);
    expect(performance.now() - begun).toBeLessThan(4000);
  });

  it('through too few readings is no knowledge of their scatter, neither for the page nor for a fit', () => {
    const rows = film(0.25, 0.8, 3);
    const { noise, readings } = treatReadings(rows, PLAIN_TREATMENT);
    expect(noise).toBeNull();
    expect(toDegrees(readings.scatter)).toBeGreaterThan(0.4);
    expect(leastSmoothing(rows)).toBe(1);
    expect(treatReadings(rows, { ...PLAIN_TREATMENT, smoothing: 1 }).noise).not.toBeNull();
  });

  it('longer than the rest before the turn does not move where it stood', () => {
    const { start, knots } = treatReadings(film(0.05, 0.1, 2), { ...PLAIN_TREATMENT, smoothing: 1.6 });
    expect(Math.abs(toDegrees(start) - 30)).toBeLessThan(0.5);
    expect(Math.abs(toDegrees(knots.at(-1)!.inclination) + 90)).toBeLessThan(0.5);
    expect(Math.abs(knots.at(-1)!.time - 5)).toBeLessThan(0.6);
  });
});

describe('a measured tilt that counts from elsewhere', () => {
  const down = (from: number) => times.map((t) => ({ time: t, angle: fromDegrees(from + 30 - truth(t)) }));
  const tiltOf = (zero: number) =>
    ({
      kind: 'measured',
      limits: WIDEST_LIMITS,
      origin: '',
      ...treatReadings(down(0), { ...PLAIN_TREATMENT, reversed: true, zero: fromDegrees(zero) }),
    }) as const;

  it('is refused once, in words of its readings, with how many and what to do', () => {
    const issues = checkKnots(tiltOf(0));
    expect(issues).toHaveLength(1);
    expect(issues[0]!.message).toMatch(
      /^\d+ of 61 smoothed readings are out of reach, the furthest at −120°\.$/,
    );
    expect(issues[0]!.remedy).toMatch(/what it shows when its face is level, or where the die starts/);
    const { start, knots } = tiltOf(0);
    const out = [start, ...knots.map(({ inclination }) => inclination)].filter(
      (one) => toDegrees(one) < -100,
    );
    expect(issues[0]!.message).toContain(`${out.length} of 61`);
    expect(checkKnots(tiltOf(30))).toEqual([]);
  });

  it('that would turn too quickly is not told of knots', () => {
    const [issue] = checkKnots({
      kind: 'measured',
      start: 0,
      limits: WIDEST_LIMITS,
      origin: '',
      knots: [{ time: 0.3, inclination: -1.5 }],
    });
    expect(`${issue!.message} ${issue!.remedy}`).not.toMatch(/knot/i);
  });
});

describe('what is known of the readings', () => {
  const noisy = (noise: number, seed: number) => {
    const bell = bellFrom(seed);
    return Array.from({ length: 200 }, (_, i) => {
      const share = Math.min(1, Math.max(0, (i - 40) / 120));
      return { time: i / 50, angle: fromDegrees(30 - 120 * share ** 2 * (3 - 2 * share) + noise * bell()) };
    });
  };

  it('is the scatter of one reading, not of the line that follows it', () => {
    const scatters = [1, 2, 3, 4].map((seed) =>
      toDegrees(treatReadings(noisy(0.3, seed), PLAIN_TREATMENT).readings.scatter),
    );
    const mean = scatters.reduce((sum, one) => sum + one, 0) / scatters.length;
    expect(Math.abs(mean / 0.3 - 1)).toBeLessThan(0.1);
  });

  it('a tilt sets off from rest and comes to rest: no jump of the rate where its readings are cut', () => {
    const { start, knots } = treatReadings(noisy(0.1, 3), PLAIN_TREATMENT);
    const motion = knotMotion({ start, knots });
    const rateAt = (share: number) => toDegrees(Math.abs(motion.rateAt(share * motion.duration)));
    // The rate of the tilt that was read rises evenly from 0 to 75°/s at its middle and 2 % on is 6°/s at most.
    for (const share of [0.005, 0.01, 0.02]) {
      expect(rateAt(share)).toBeLessThan(10);
      expect(rateAt(1 - share)).toBeLessThan(10);
    }
    expect(motion.duration).toBeGreaterThan(2.25);
    expect(motion.duration).toBeLessThan(2.5);
  });

  it('noise does not look like a beginning: the tilt starts where it turns', () => {
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const { knots } = treatReadings(noisy(0.4, seed), PLAIN_TREATMENT);
      // It turns for 2.4 s and creeps at both ends of them.
      expect(knots.at(-1)!.time).toBeGreaterThan(2);
      expect(knots.at(-1)!.time).toBeLessThan(2.45);
    }
  });
});
