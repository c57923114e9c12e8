import type { Issue } from '$src/core/issue';
import { degrees } from './degrees';
import { LEAST_TURN, ROUNDING, usableLimits } from './range';
import type { FrontLedTilt } from './tilt';

/** Shares of the critical speed worth asking for: above it the front folds film, and far below it nothing moves. */
export const SHARE_RANGE = { least: 0.1, most: 1 } as const;
/** [s] */
export const HOME_RANGE = { least: 0.2, most: 60 } as const;

/** What is wrong with what a front-led tilt asks for; the tilt itself is worked out in the pour. */
export function checkFrontLed({ start, end, share, homeWithin, limits }: FrontLedTilt): Issue[] {
  const { highestStart, lowestEnd } = usableLimits(limits);
  const issues: Issue[] = [];
  const isWrong = (isRight: boolean, path: string, message: string, remedy: string) => {
    if (!isRight) issues.push({ path, message, remedy });
  };
  isWrong(
    start <= highestStart + ROUNDING,
    'start',
    `The start is not at or below the highest start, ${degrees(highestStart)}.`,
    `Start at ${degrees(highestStart)} or lower.`,
  );
  isWrong(
    end >= lowestEnd - ROUNDING && start - end >= LEAST_TURN - ROUNDING,
    'end',
    `The end is not between the start and the lowest end, ${degrees(lowestEnd)}.`,
    `End between ${degrees(lowestEnd)} and the start.`,
  );
  isWrong(
    share >= SHARE_RANGE.least && share <= SHARE_RANGE.most,
    'share',
    'This front speed cannot be asked for.',
    'Give 10 to 100 % of critical; 60 % leaves room for what the model does not see.',
  );
  isWrong(
    homeWithin === null || (homeWithin >= HOME_RANGE.least && homeWithin <= HOME_RANGE.most),
    'homeWithin',
    'This time cannot be asked for.',
    `Give ${HOME_RANGE.least} to ${HOME_RANGE.most} s, or leave it open.`,
  );
  return issues;
}
