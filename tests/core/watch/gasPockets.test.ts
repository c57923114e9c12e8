import { expect, test } from 'vitest';
import type { Mesh } from '$src/core/mesh/mesh';
import { watchGas } from '$src/core/watch/gasPockets';
import type { Sample } from '$src/core/watch/sample';

const mesh = { facePlace: Float64Array.from({ length: 12 }, (_, j) => j * 0.02) } as unknown as Mesh;

/** Looks 2 ms apart at a pocket with these pressures [Pa], none where negative; `held` = it has no open vent [m³]. */
function seen(pressures: readonly number[], held = 0) {
  const watch = watchGas(mesh, 2400, 9.81);
  const profile = { places: 0 };
  pressures.forEach((backPressure, k) => {
    const gas = {
      pocketFrom: backPressure < 0 ? -1 : 2,
      pocketTo: 9,
      backPressure,
      sealedVolume: 1e-4,
      heldVolume: held,
      displaced: 1e-6 * k,
    };
    watch.look({
      time: k * 2e-3,
      elapsed: 2e-3,
      inclination: 0,
      flow: { gas },
      mesh,
      profile,
    } as unknown as Sample);
  });
  return watch.folds();
}

const steady = (pressure: number, looks = 40) => Array.from({ length: looks }, () => pressure);

test('gas that leaves as fast as the metal comes is no fold; without an open vent it is one', () => {
  expect(seen(steady(2))).toEqual([]);
  expect(seen(steady(2), 1e-5)).toHaveLength(1);
});

test('the vent wanted is for what metal displaces of shut gas, and not for a pocket that comes or goes', () => {
  const area = (pressures: readonly number[]) => seen(pressures)[0]!.details['vent_area_for_100_Pa_m2'];
  // 1 cm³ every 2 ms through an orifice at 100 Pa: 0.6 A √(200/0.5).
  expect(area(steady(400, 60))).toBeCloseTo(5e-4 / (0.6 * 20), 9);
  expect(area([...steady(400, 60), ...steady(-1, 40), ...steady(400, 60)])).toBeCloseTo(5e-4 / (0.6 * 20), 9);
});

test('a pressure that lasts is told, a jump of one look is not', () => {
  const jump = steady(400).with(30, 20_000);
  expect(seen(jump).map(({ severity, size }) => [severity.value, size])).toEqual([[400, 'marked']]);
});

test('a pocket of gas that comes and goes within 60 ms is none', () => {
  const flicker = Array.from({ length: 120 }, (_, k) => (k % 30 < 12 ? 3000 : 0));
  expect(seen(flicker)).toEqual([]);
});

/** A die of mesh cells 4 mm long and 20 mm high at rest, with these shares of them full. */
function atRest(shares: readonly number[]) {
  const room = 4e-3 * 20e-3;
  const cells = shares.length;
  const filled = {
    cells,
    mouthFace: 0,
    facePlace: Float64Array.from({ length: cells + 1 }, (_, j) => j * 4e-3),
    volume: new Float64Array(cells).fill(room),
    width: new Float64Array(cells).fill(1),
  } as unknown as Mesh;
  const watch = watchGas(filled, 2400, 9.81);
  const flow = { gas: null, volume: Float64Array.from(shares, (share) => share * room) };
  watch.look({ time: 1, elapsed: 2e-3, inclination: 0, flow, mesh: filled } as unknown as Sample);
  return watch.folds().map(({ severity }) => Math.round(severity.value * 1e6));
}

test('pockets under the roof that lie less than 20 mm apart are one', () => {
  expect(atRest([1, 0, 0, 1, 1, 1, 1, 0, 1])).toEqual([240]);
  expect(atRest([1, 0, 0, 1, 1, 1, 1, 1, 0, 1])).toEqual([160, 80]);
});

test('it is borderline near the pressure that counts, or when it comes and goes', () => {
  expect(seen(steady(110, 60)).map(({ isClear }) => isClear)).toEqual([false]);
  expect(seen(steady(125, 60)).map(({ isClear }) => isClear)).toEqual([true]);
  const comes = Array.from({ length: 60 }, (_, k) => (k % 6 === 0 ? -1 : 400));
  expect(seen(comes).map(({ isClear }) => isClear)).toEqual([false]);
});
