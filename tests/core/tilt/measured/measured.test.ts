import { describe, expect, it } from 'vitest';
import { checkKnots } from '$src/core/tilt/checkKnots';
import { knotMotion } from '$src/core/tilt/knotMotion';
import { type Readings, readRows } from '$src/core/tilt/measured/readRows';
import { repeatsOf } from '$src/core/tilt/measured/repeats';
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
    expect(treated.noise).toBeGreaterThan(fromDegrees(0.1));
    expect(treated.noise).toBeLessThan(fromDegrees(0.3));
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

describe('what is known of the readings', () => {
  const noisy = (noise: number, seed: number) => {
    let state = seed;
    const even = () => {
      state = (state * 1664525 + 1013904223) % 4294967296;
      return (state + 0.5) / 4294967296;
    };
    const bell = () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
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
