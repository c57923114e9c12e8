import { basins } from './basin';
import type { Family } from './check';
import { columns } from './columns';
import { damBreaks } from './damBreak';
import { films } from './film';
import { frames } from './frame';
import { pours } from './pours';
import { sloshes } from './slosh';
import { slowTilt } from './slowTilt';
import { stands } from './stand';
import { steadyStreams } from './steady';
import { stillMetal } from './stillMetal';

/** All known answers, in the order of the verification page. */
export const FAMILIES: readonly Family[] = [
  stillMetal,
  films,
  damBreaks,
  steadyStreams,
  basins,
  sloshes,
  frames,
  stands,
  slowTilt,
  pours,
  columns,
];
