import type { Book } from '$src/cells/kinds';
import {
  armBehind,
  CASTING,
  cautions,
  chargeCell,
  compareCell,
  FED,
  metalCell,
  note,
  pourCell,
  SLOW_PAST_LEVEL,
  sectionCell,
  staged,
  steady,
  tiltCell,
  WIDE_FLUSH,
} from './shop';

/** Roofed as far back as holds what the quick tilt keeps out of the arm, too, so that none of it runs over. */
const BASIN = armBehind({ ...WIDE_FLUSH, open: 73 });

export const twoTilts: Book = {
  title: 'Two tilt profiles side by side',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'One section, one charge, and a start that is right: 30° uphill from a flush basin. What is left to choose is the turning.',
      '**Quick and steady** lets the machine swing at 45° a second. **Staged** turns to +8° briskly while the front is still short, goes slowly until it is just past level, where the front is longest and freest, and hurries once the arm is full of metal that has nowhere left to run.',
      'The quick swing does more than run fast. Its metal closes the arm from floor to roof behind the front and shuts gas in. In the computation that gas stays where it is; in a die it bubbles up through the metal, which is no better.',
      'The basin is the same, and it is the feeder at the end: with 1.2 kg it holds enough over the mouth for the arm to draw on. That helps only a die that fills.',
      'Step the comparison by filled share: at the same filling, look at the surface. Then by time: see what the gentle tilt costs in seconds.',
    ]),
    sectionCell('flush-basin', 'Flush basin', BASIN, 'charge'),
    metalCell(),
    chargeCell('charge', 'Arm and feeder', 'flush-basin', 'quick', { by: 'mass', mass: FED }),
    tiltCell('quick', 'Quick and steady', steady(30, 45)),
    tiltCell('staged', 'Staged', staged(30, SLOW_PAST_LEVEL)),
    pourCell('pour-quick', 'Quick and steady', { section: 'flush-basin', charge: 'charge', tilt: 'quick' }),
    pourCell('pour-staged', 'Staged', { section: 'flush-basin', charge: 'charge', tilt: 'staged' }),
    compareCell('two-tilts', 'Quick against staged', ['pour-quick', 'pour-staged'], 'filled share'),
    note('try', 'Try it', [
      'Make the middle stage quicker until the verdict changes: that is how fast this arm may pass level.',
      'A gentle tilt is not free. The metal cools from the moment it touches the die; a thin arm may lap before it is full. How long the coldest place had left stands with the figures of each pour and, where it is little, in the verdict. Coat and die temperature are the defaults of the program: keep well inside what your own castings allow.',
      'A hand-worked or damper-held machine has one rate, not three. Give the steady tilt the time of the staged one and compare again.',
    ]),
    cautions('cautions'),
  ],
};
