import { expect, test } from 'vitest';
import { watchFront } from '$src/core/watch/front';
import { lookAt } from './profileSample';

const LIQUID = { criticalSpeed: 0.49, surfaceTension: 0.85, density: 2400 };

/** Speeds of a front that runs at 0.3 m/s, from 0.15 m on at 0.6 m/s, to the end wall of a die of this length [m]. */
function speedsIn(dieLength: number) {
  const watch = watchFront(dieLength, LIQUID);
  for (let k = 0; k < 500; k++) {
    const time = k * 2e-3;
    const slow = 0.3 * time;
    const front = Math.min(dieLength, slow <= 0.15 ? slow : 0.15 + 0.6 * (time - 0.5));
    watch.look({ ...lookAt(time, () => ({ depth: 0.01, speed: 1 })), front, dieLength });
  }
  return watch.frontSpeeds();
}

test('the speed is read up to the end wall, in a die that is a multiple of 5 mm long as in any other', () => {
  for (const [length, last] of [
    [0.2, 0.19],
    [0.203, 0.19],
  ] as const) {
    const { place, speed } = speedsIn(length);
    expect(place.at(-1)).toBeCloseTo(last, 9);
    expect(speed.at(-1)).toBeCloseTo(0.6, 2);
  }
});
