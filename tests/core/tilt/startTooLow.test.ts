import { expect, test } from 'vitest';
import { checkTilt } from '$src/core/tilt/checkTilt';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { SteadyTilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';

const turning = (start: number, end: number): SteadyTilt => ({
  kind: 'steady',
  start: fromDegrees(start),
  end: fromDegrees(end),
  rate: fromDegrees(8),
  smoothing: 0.3,
  limits: WIDEST_LIMITS,
});

test('a start below its end is refused at the start, and level is the nearest that is offered', () => {
  for (const [start, end] of [
    [-95, -90],
    [-90, -90],
    [-40, -30],
  ] as const) {
    const { issues, nearest } = checkTilt(turning(start, end));
    expect(issues.map(({ path }) => path)).toEqual(['start']);
    expect(issues[0]!.message).toContain(`start at −${-start}°`);
    expect(issues[0]!.remedy).not.toContain('stage');
    expect(nearest).toMatchObject({ start: 0, end: fromDegrees(end) });
    expect(checkTilt(nearest!).issues).toEqual([]);
  }
});

test('an end above a start that is none too low stays the slip of the end, and a steady tilt has no stage to take out', () => {
  const { issues } = checkTilt(turning(30, 40));
  expect(issues.map(({ path }) => path)).toEqual(['end']);
  expect(issues[0]!.remedy).not.toContain('stage');
  expect(checkTilt(turning(-5, -90)).issues).toEqual([]);
});
