import { expect, test } from 'vitest';
import { breakPoints } from '$src/core/section/breakPoints';
import { cavityArea, cavityVolume } from '$src/core/section/cavity';
import { floorPathFromMouth } from '$src/core/section/floorPath';
import { lineAt } from '$src/core/section/lineAt';
import { HINGE_ARM, hingeArm, pitBehindSill, TAPERED_LEVER, taperedLever } from '$src/core/section/shapes';
import { widthAt } from '$src/core/section/widthAt';

const pit = pitBehindSill();

test('a vertical step has two heights, one on each side', () => {
  expect(lineAt(pit.floor, 0.12, 'left')).toBe(-0.025);
  expect(lineAt(pit.floor, 0.12, 'right')).toBe(0);
  expect(lineAt(pit.roof, 0.12, 'left')).toBe(0.06);
  expect(lineAt(pit.roof, 0.12, 'right')).toBe(0.03);
  expect(
    lineAt(
      [
        { x: 0, y: 0 },
        { x: 1, y: 2 },
      ],
      0.25,
      'left',
    ),
  ).toBe(0.5);
});

test('width is that of all cavities past the mouth', () => {
  const arm = hingeArm();
  expect(widthAt(arm, arm.mouth, 'left')).toBe(HINGE_ARM.basinWidth);
  expect(widthAt(arm, arm.mouth, 'right')).toBe(2 * HINGE_ARM.cavityWidth);
});

test('cavity of the hinge arm: feeder end, tapering arm and boss', () => {
  // By hand [mm]: 50·32·40 + 140·(14 + 10)/2·28 + 40·28·40 = 155 840 mm³ a cavity; 50·32 + 140·12 + 40·28 = 4400 mm².
  expect(cavityVolume(hingeArm())).toBeCloseTo(2 * 155_840e-9, 15);
  expect(cavityArea(hingeArm())).toBeCloseTo(4400e-6, 12);
});

test('cavity of the tapered lever: one wedge that narrows in height and in width', () => {
  // By hand [mm]: 180/6·(2·60·34 + 60·14 + 36·34 + 2·36·14) = 214 560 mm³; 180·(34 + 14)/2 = 4320 mm².
  expect(cavityVolume(taperedLever())).toBeCloseTo(214_560e-9, 15);
  expect(cavityArea(taperedLever())).toBeCloseTo(4320e-6, 12);
  const lever = taperedLever();
  expect(widthAt(lever, lever.mouth, 'right')).toBe(TAPERED_LEVER.cavityWidth);
  expect(widthAt(lever, lever.mouth + TAPERED_LEVER.leverLength, 'left')).toBe(TAPERED_LEVER.widthAtEnd);
});

test('floor path counts slopes and the height of steps, backwards negative', () => {
  const floor = [
    { x: 0, y: 0 },
    { x: 0.1, y: 0 },
    { x: 0.1, y: 0.02 },
    { x: 0.13, y: 0.06 },
    { x: 0.2, y: 0.06 },
  ];
  const section = { ...pit, floor, mouth: 0.05 };
  expect(floorPathFromMouth(section, 0.13)).toBeCloseTo(0.05 + 0.02 + 0.05, 12);
  expect(floorPathFromMouth(section, 0.02)).toBeCloseTo(-0.03, 12);
});

test('break points are all places where anything changes, once', () => {
  expect(breakPoints(pit)).toEqual([0, 0.12, 0.32]);
});
