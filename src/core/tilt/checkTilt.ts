import type { Issue } from '$src/core/issue';
import { toDegrees } from '$src/core/units';
import { checkFrontLed } from './checkFrontLed';
import { checkKnots } from './checkKnots';
import { checkMachineTilt } from './machine/checkMachine';
import { nearestFrontLed, nearestRelease } from './nearestEnds';
import { nearestKnots } from './nearestKnots';
import { nearestMeasured } from './nearestMeasured';
import { isStartTooLow, nearestTilt } from './nearestTilt';
import { INCLINATION_RANGE, LEAST_TURN, MOST_STAGES, RATE_RANGE, ROUNDING, usableLimits } from './range';
import type { MachineLimits, ProgrammedTilt, Stage, SteadyTilt, Tilt } from './tilt';
import { restTime, stagesOf, turnsOf } from './turns';

export interface TiltCheck {
  /** Paths are relative to the tilt, e.g. `stages.1.to`. Empty when the machine can do it. */
  readonly issues: readonly Issue[];
  /** The nearest tilt the machine can do, offered when this one is refused; null when none, or when nothing is wrong. */
  readonly nearest: Tilt | null;
}

/** Whether the machine, and the solver, can do this tilt. */
export function checkTilt(tilt: Tilt): TiltCheck {
  switch (tilt.kind) {
    case 'machine':
      return offered(tilt, checkMachineTilt(tilt), nearestRelease);
    case 'drawn':
      return offered(tilt, checkKnots(tilt), nearestKnots);
    case 'measured':
      return offered(tilt, checkKnots(tilt), nearestMeasured);
    case 'front-led':
      return offered(tilt, checkFrontLed(tilt), nearestFrontLed);
    default:
      return checkProgrammed(tilt);
  }
}

function offered<T extends Tilt>(
  tilt: T,
  own: readonly Issue[],
  nearestTo: (tilt: T) => Tilt | null,
): TiltCheck {
  const broken = limitIssues(tilt.limits);
  const issues = [...broken, ...own];
  return { issues, nearest: issues.length === 0 || broken.length > 0 ? null : nearestTo(tilt) };
}

function checkProgrammed(tilt: ProgrammedTilt): TiltCheck {
  const broken = [...notNumbers(tilt), ...limitIssues(tilt.limits)];
  if (broken.length > 0) return { issues: broken, nearest: null };
  const issues = [...countIssues(tilt), ...angleIssues(tilt), ...paceIssues(tilt)];
  return { issues, nearest: issues.length === 0 ? null : nearestTilt(tilt) };
}

function notNumbers(tilt: ProgrammedTilt): Issue[] {
  const stages = stagesOf(tilt).flatMap((stage, index): [string, number][] => [
    [pathOf(tilt, index, 'to'), stage.to],
    paceField(tilt, stage, index),
  ]);
  const limits = Object.entries(tilt.limits).map(([key, value]): [string, number] => [
    `limits.${key}`,
    value,
  ]);
  const all: [string, number][] = [
    ['start', tilt.start],
    ['smoothing', tilt.smoothing],
    ...stages,
    ...limits,
  ];
  return all
    .filter(([, value]) => !Number.isFinite(value))
    .map(([path]) => ({ path, message: 'This is not a number.', remedy: 'Type a number.' }));
}

function limitIssues(limits: MachineLimits): Issue[] {
  const usable = usableLimits(limits);
  const issues: Issue[] = [];
  if (usable.highestStart - usable.lowestEnd < LEAST_TURN) {
    issues.push({
      path: 'limits.highestStart',
      message: `The machine's highest start leaves no room above its lowest end, within ${degrees(INCLINATION_RANGE.highest)} to ${degrees(INCLINATION_RANGE.lowest)}.`,
      remedy: 'Raise the highest start or lower the lowest end.',
    });
  }
  if (usable.slowest > usable.quickest) {
    issues.push({
      path: 'limits.slowest',
      message: `The machine's slowest rate is above its quickest, within ${degrees(RATE_RANGE.slowest)} to ${degrees(RATE_RANGE.quickest)} a second.`,
      remedy: 'Lower the slowest rate or raise the quickest.',
    });
  }
  return issues;
}

function countIssues(tilt: ProgrammedTilt): Issue[] {
  const count = stagesOf(tilt).length;
  if (count >= 1 && count <= MOST_STAGES) return [];
  return [
    {
      path: 'stages',
      message: count === 0 ? 'The tilt has no stage.' : `The tilt has ${count} stages.`,
      remedy: `Give one to ${MOST_STAGES} stages.`,
    },
  ];
}

function angleIssues(tilt: ProgrammedTilt): Issue[] {
  const { highestStart, lowestEnd } = usableLimits(tilt.limits);
  const issues: Issue[] = [];
  if (tilt.start > highestStart + ROUNDING) {
    issues.push({
      path: 'start',
      message: `A start at ${degrees(tilt.start)} is above the highest start, ${degrees(highestStart)}.`,
      remedy: `Start at ${degrees(highestStart)} or lower, or raise the machine's limit (the model stops at ${degrees(INCLINATION_RANGE.highest)}).`,
    });
  }
  if (isStartTooLow(tilt)) return [...issues, startTooLow(tilt)];
  let before = tilt.start;
  stagesOf(tilt).forEach((stage, index) => {
    issues.push(...turnIssues(tilt, index, before, stage.to, lowestEnd));
    before = stage.to;
  });
  return issues;
}

function startTooLow({ start, end }: SteadyTilt): Issue {
  return {
    path: 'start',
    message: `The die would start at ${degrees(start)}, which is not above its end, ${degrees(end)}: it must turn down.`,
    remedy: `Start above ${degrees(end)} by ${degrees(LEAST_TURN)} or more; level is 0°.`,
  };
}

function turnIssues(
  tilt: ProgrammedTilt,
  index: number,
  from: number,
  to: number,
  lowestEnd: number,
): Issue[] {
  const path = pathOf(tilt, index, 'to');
  if (to < lowestEnd - ROUNDING) {
    return [
      {
        path,
        message: `Turning to ${degrees(to)} goes below the lowest end, ${degrees(lowestEnd)}.`,
        remedy: `End at ${degrees(lowestEnd)} or higher, or lower the machine's limit (the model stops at ${degrees(INCLINATION_RANGE.lowest)}).`,
      },
    ];
  }
  if (from - to >= LEAST_TURN - ROUNDING) return [];
  return [
    {
      path,
      message: `The die turns to ${degrees(to)} from ${degrees(from)}: the inclination must fall.`,
      remedy: `Give an inclination below ${degrees(from)} by ${degrees(LEAST_TURN)} or more${tilt.kind === 'steady' ? '' : ', or take the stage out'}.`,
    },
  ];
}

function paceIssues(tilt: ProgrammedTilt): Issue[] {
  if (tilt.smoothing < 0) {
    return [{ path: 'smoothing', message: 'The smoothing is below 0.', remedy: 'Give 0 s or more.' }];
  }
  const stages = stagesOf(tilt);
  const issues = stages.flatMap((stage, index) => rateIssues(tilt, stage, index));
  if (issues.length > 0) return issues;
  const falling = turnsOf(tilt).filter((turn) => turn.from - turn.to >= LEAST_TURN - ROUNDING);
  const shortest = Math.min(...falling.map((turn) => turn.steadyTime));
  if (tilt.smoothing <= shortest + ROUNDING) return [];
  return [
    {
      path: 'smoothing',
      message: `Smoothing over ${seconds(tilt.smoothing)} is longer than the shortest stage leaves room for.`,
      remedy: `Give ${seconds(shortest)} or less, or a longer stage.`,
    },
  ];
}

function rateIssues(tilt: ProgrammedTilt, stage: Stage, index: number): Issue[] {
  const { slowest, quickest } = usableLimits(tilt.limits);
  const turn = turnsOf(tilt)[index]!;
  if (turn.from - turn.to < LEAST_TURN - ROUNDING) return [];
  const { rate } = turn;
  if (rate >= slowest - ROUNDING && rate <= quickest + ROUNDING) return [];
  const [path] = paceField(tilt, stage, index);
  if ('rate' in stage) {
    return [
      {
        path,
        message: `A rate of ${degrees(rate)} a second is out of range.`,
        remedy: `Give ${degrees(slowest)} to ${degrees(quickest)} a second.`,
      },
    ];
  }
  const rest = restTime(index, stagesOf(tilt).length, tilt.smoothing);
  const turned = turn.from - turn.to;
  return [
    {
      path,
      message: `Turning ${degrees(turned)} in ${seconds(stage.time)} is out of the machine's range of rates.`,
      remedy: `Give ${seconds(turned / quickest + rest)} to ${seconds(turned / slowest + rest)}.`,
    },
  ];
}

function pathOf(tilt: ProgrammedTilt, index: number, field: 'to'): string {
  return tilt.kind === 'steady' ? 'end' : `stages.${index}.${field}`;
}

function paceField(tilt: ProgrammedTilt, stage: Stage, index: number): [string, number] {
  const [field, value]: [string, number] = 'rate' in stage ? ['rate', stage.rate] : ['time', stage.time];
  return [tilt.kind === 'steady' ? field : `stages.${index}.${field}`, value];
}

function degrees(radians: number): string {
  return `${Number(toDegrees(radians).toFixed(2))}°`.replace('-', '−');
}

function seconds(time: number): string {
  return `${Number(time.toPrecision(3))} s`;
}
