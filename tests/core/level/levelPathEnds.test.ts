import { expect, test } from 'vitest';
import { isInTheDie } from '$src/core/level/firstFlow';
import { levelPath } from '$src/core/level/levelPath';
import { standOf } from '$src/core/level/stand';
import { cavityVolume } from '$src/core/section/cavity';
import { hingeArm } from '$src/core/section/shapes';
import { fromDegrees } from '$src/core/units';

const LIQUID = { density: 2400, surfaceTension: 0.865, contactAngle: fromDegrees(150) };

test.each([
  ['without a stand', null],
  ['with one', standOf(LIQUID)],
])('%s, a path that ends early is the beginning of the whole one, to the last digit', (_, stand) => {
  const section = hingeArm();
  const volume = 1.2 * cavityVolume(section);
  const [start, end] = [fromDegrees(40), fromDegrees(-90)];
  const whole = levelPath(section, volume, start, end, stand);
  const ended = levelPath(section, volume, start, end, stand, isInTheDie);
  const count = ended.inclination.length;
  expect(count).toBeLessThan(whole.inclination.length);
  expect(ended.front.at(-1)).toSatisfy(isInTheDie);
  expect(ended.front.filter(isInTheDie).length).toBeLessThan(4);
  expect(ended.inclination).toEqual(whole.inclination.slice(0, count));
  expect(ended.front).toEqual(whole.front.slice(0, count));
  expect(ended.firstFlow).toEqual(whole.firstFlow);
});
