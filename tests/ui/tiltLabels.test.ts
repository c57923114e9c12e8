import { describe, expect, it } from 'vitest';
import { motionOf } from '$src/core/tilt/motionOf';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { ProgrammedTilt } from '$src/core/tilt/tilt';
import { turnsOf } from '$src/core/tilt/turns';
import { fromDegrees, toDegrees } from '$src/core/units';
import { type Box, meet } from '$src/report/drawing/box';
import { knotsOf, samplesOf } from '$src/ui/tilt/tiltEdits';
import { levelLabel, rateLabels, type TiltLabel, type TiltScene } from '$src/ui/tilt/tiltLabels';

const [LEFT, RIGHT, TOP, ANGLES] = [44, 18, 24, 190];

const staged = (start: number, stages: readonly (readonly [to: number, rate: number])[]): ProgrammedTilt => ({
  kind: 'staged',
  start: fromDegrees(start),
  stages: stages.map(([to, rate]) => ({ to: fromDegrees(to), rate: fromDegrees(rate) })),
  smoothing: 0.2,
  limits: WIDEST_LIMITS,
});

function sceneOf(tilt: ProgrammedTilt, width: number): TiltScene {
  const motion = motionOf(tilt);
  const highest = Math.ceil(toDegrees(motion.start) / 30) * 30;
  const lowest = Math.floor(toDegrees(motion.end) / 30) * 30;
  const x = (time: number) => LEFT + ((width - RIGHT - LEFT) * time) / motion.duration;
  const y = (degrees: number) => TOP + (ANGLES * (highest - degrees)) / (highest - lowest);
  const curve = samplesOf(tilt).map((point) => ({ x: x(point.time), y: y(toDegrees(point.inclination)) }));
  const begins = knotsOf(tilt).map(({ time }) => time);
  return { turns: turnsOf(tilt), begins, curve, x, y, left: LEFT, right: width - RIGHT, width };
}

const boxOf = ({ words, x, y, end }: TiltLabel, letter: number): Box => ({
  left: end ? x - words.length * letter : x,
  right: end ? x : x + words.length * letter,
  top: y - 10,
  bottom: y + 2,
});

const TILTS = {
  'a short first stage, slow': staged(12, [
    [-4, 3],
    [-90, 40],
  ]),
  'a short first stage, quick': staged(12, [
    [2, 40],
    [-90, 12],
  ]),
  'a last stage that ends just below level': staged(30, [
    [5, 30],
    [-8, 2],
  ]),
  'three stages about level': staged(15, [
    [4, 4],
    [-4, 2],
    [-90, 60],
  ]),
} as const;
const drawn = Object.entries(TILTS).flatMap(([name, tilt]) =>
  [280, 340, 600, 900].map((width) => [name, width, sceneOf(tilt, width)] as const),
);

const overRates = (label: TiltLabel, scene: TiltScene): boolean =>
  rateLabels(scene).some((rate) => meet(boxOf(rate, 7), boxOf(label, 6)));

describe('the words of the level in the chart of a tilt', () => {
  it.each(drawn)('keep off the rates and the curve: %s, %i px', (_, __, scene) => {
    const level = levelLabel(scene);
    expect(overRates(level, scene)).toBe(false);
    const box = boxOf(level, 6);
    expect(box.left).toBeGreaterThanOrEqual(LEFT);
    expect(
      scene.curve.some(({ x, y }) => x > box.left && x < box.right && y > box.top && y < box.bottom),
    ).toBe(false);
  });

  it('stand at the right end where nothing is in the way, and would lie on a rate there in some of these', () => {
    const right = (scene: TiltScene): TiltLabel => ({
      words: 'die level',
      x: scene.right,
      y: scene.y(0) - 5,
      end: true,
    });
    const free = sceneOf(
      staged(30, [
        [12, 15],
        [-3, 6],
        [-90, 25],
      ]),
      600,
    );
    expect(levelLabel(free)).toEqual(right(free));
    expect(drawn.some(([, , scene]) => overRates(right(scene), scene))).toBe(true);
  });
});
