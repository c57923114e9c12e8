import { expect, test } from 'vitest';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import { fromDegrees, toDegrees } from '$src/core/units';
import {
  firstTreatment,
  type ReadFile,
  readFile,
  shifted,
  startingHigher,
  takeReadings,
} from '$src/ui/tilt/measured/takeReadings';
import { unread } from '$src/ui/tilt/tiltEdits';

/** A film's readings, four a second: 0 to 120° counted up, off by up to `off` degrees. */
async function film(name: string, off: number): Promise<ReadFile> {
  const lines = Array.from({ length: 25 }, (_, i) => {
    const share = Math.min(1, Math.max(0, (i - 2) / 20));
    const angle = 120 * share ** 2 * (3 - 2 * share) + off * Math.sin(2.7 * i + 1);
    return `${(i * 0.25).toFixed(2)},${angle.toFixed(2)}`;
  });
  const read = await readFile(new File([['time_s,angle_deg', ...lines].join('\n')], name));
  if ('refusals' in read) throw new Error(read.refusals[0]);
  return read;
}

const empty = unread({ kind: 'measured', start: 0, limits: WIDEST_LIMITS, knots: [], origin: '' });

test('says how readings scatter, or that too few stand in the time they are smoothed over', async () => {
  const file = await film('film.csv', 0.8);
  const first = firstTreatment([file]);
  expect(first.reversed).toBe(true);
  const { origin, readings } = takeReadings(empty, [file], first);
  const told = /Smoothed over (\d\.\d\d) s, scatter about the line (\d\.\d\d)°\./.exec(origin)!;
  expect(Number(told[1])).toBe(readings!.smoothedOver);
  expect(Number(told[1])).toBeGreaterThanOrEqual(1);
  expect(Number(told[2])).toBeGreaterThan(0.2);
  expect(takeReadings(empty, [file], { ...first, smoothing: 0.2 }).origin).toContain(
    'Scatter about the line not known: too few readings in 0.20 s.',
  );
});

test('repeats are smoothed alike, as the noisiest of them needs', async () => {
  const [quiet, loud] = [await film('a.csv', 0), await film('b.csv', 1.5)];
  const alone = [quiet, loud].map((file) => firstTreatment([file]).smoothing);
  expect(alone[1]).toBeGreaterThan(alone[0]!);
  expect(firstTreatment([quiet, loud]).smoothing).toBe(alone[1]);
});

test.each([true, false])('another start moves every reading by as much, counted upwards: %s', async (up) => {
  const file = await film('film.csv', 0.3);
  const rows = up ? file.rows : file.rows.map(({ time, angle }) => ({ time, angle: -angle }));
  const files = [{ ...file, rows }];
  const first = firstTreatment(files);
  expect(first.reversed).toBe(up);
  const tilt = takeReadings(empty, files, first);
  expect(checkTilt(tilt).issues).toHaveLength(1);
  const by = fromDegrees(30) - tilt.start;
  const treatment = startingHigher(first, by);
  const higher = takeReadings(tilt, files, treatment);
  expect(toDegrees(higher.start)).toBeCloseTo(30, 9);
  for (const [i, { time, inclination }] of higher.knots.entries()) {
    expect(time).toBeCloseTo(tilt.knots[i]!.time, 9);
    expect(inclination - tilt.knots[i]!.inclination).toBeCloseTo(by, 9);
  }
  expect(checkTilt(higher).issues).toEqual([]);
  // A book that is opened again has no file: the same comes of its readings.
  const [moved, again] = [shifted(tilt, by), higher].map(({ start, knots }) => [
    start,
    ...knots.map(({ inclination }) => inclination),
  ]);
  for (const [i, angle] of moved!.entries()) expect(angle).toBeCloseTo(again![i]!, 9);
});
