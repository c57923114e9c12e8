import type { Issue } from '$src/core/issue';
import type { Wait } from './waitInBasin';

/** How the basin is filled, and what floats and hangs there. Lengths [m]. */
export interface Ladling extends Wait {
  /** Lower edge of the skim bar at the start, above (+) or below (−) the lip; null = no bar. */
  readonly skimBar: number | null;
  /** Thickness of the dross that floats on the metal when the tilt begins. */
  readonly dross: number;
}

/** A short drop, five seconds from ladle to tilt, and 3 % left behind: a place to start, assumed. */
export const USUAL_LADLING: Ladling = {
  dropHeight: 0.02,
  ladleTime: 3,
  skimTime: 1,
  settleTime: 1,
  tiltStart: null,
  skullShare: 0.02,
  drossShare: 0.01,
  measuredTemperature: null,
  skimBar: null,
  dross: 0.002,
};

/** Share of the charge that can leave the basin, 0 to 1. */
export const shareThatLeaves = ({ skullShare, drossShare }: Wait): number => 1 - skullShare - drossShare;

const LONGEST_WAIT = 600;
const HIGHEST_DROP = 2;
/** More left behind than this is no pour. */
const MOST_LEFT = 0.5;

/** What is wrong with it; paths are its fields. Empty when nothing is. */
export function checkLadling(ladling: Ladling): Issue[] {
  const { dropHeight, dross, skullShare, drossShare } = ladling;
  const left = skullShare + drossShare;
  return [
    ...within('dropHeight', dropHeight, HIGHEST_DROP, 'The drop from the ladle', 'Give 0 to 2 m.'),
    ...(['ladleTime', 'skimTime', 'settleTime'] as const).flatMap((field) =>
      within(field, ladling[field], LONGEST_WAIT, 'This time', 'Give 0 to 600 s.'),
    ),
    ...within('tiltStart', ladling.tiltStart ?? 0, LONGEST_WAIT, 'The start of the tilt', 'Give 0 to 600 s.'),
    ...within('dross', dross, HIGHEST_DROP, 'The thickness of the dross', 'Give 0 or more.'),
    ...within('skullShare', skullShare, 1, 'The skull', 'Give 0 to 100 %.'),
    ...within('drossShare', drossShare, 1, 'The dross', 'Give 0 to 100 %.'),
    ...(left <= MOST_LEFT
      ? []
      : [
          {
            path: 'skullShare',
            message: 'More than half of the charge would stay behind as skull and dross.',
            remedy: 'Give shares that add up to 50 % or less; 1 to 5 % is usual.',
          },
        ]),
  ];
}

function within(path: string, value: number, most: number, what: string, remedy: string): Issue[] {
  return value >= 0 && value <= most ? [] : [{ path, message: `${what} is out of range.`, remedy }];
}
