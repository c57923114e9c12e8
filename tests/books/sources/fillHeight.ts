import type { Book, Cell } from '$src/cells/kinds';
import { fromMillimetres } from '$src/core/units';
import {
  armBehind,
  CASTING,
  cautions,
  chargeCell,
  compareCell,
  metalCell,
  note,
  pourCell,
  sectionCell,
  steady,
  tiltCell,
} from './shop';

/** Fill level at the start, under the lip [mm]. */
const LEVELS = [1, 6, 12, 18] as const;

const charges: Cell[] = LEVELS.map((below) =>
  chargeCell(`charge-${below}`, `${below} mm under the lip`, 'low-sill', 'steady-tilt', {
    by: 'fill level',
    fromLip: fromMillimetres(-below),
  }),
);
const pours: Cell[] = LEVELS.map((below) =>
  pourCell(`pour-${below}`, `Filled to ${below} mm under`, {
    section: 'low-sill',
    charge: `charge-${below}`,
    tilt: 'steady-tilt',
  }),
);

export const fillHeight: Book = {
  title: 'Fill height and front speed',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'The same hinge arm, the same basin with a low sill, the same tilt from 20° uphill. Only the ladle differs: the basin is filled to 1, 6, 12 or 18 mm under the lip. All four fill the arm.',
      'Read the comparison at the foot from left to right. The lower the fill, the later the metal comes over the lip; the later it comes, the less uphill is left; and the front runs the faster for it.',
      'Somewhere between the second and the last column the front crosses the critical speed. That is the ladling tolerance of this basin, in millimetres. It leans on the capillary stand, which is assumed: computed without it, the metal comes some 7° sooner and even the lowest fill only just reaches critical. That lower fills come later and run faster holds either way.',
      'The ladle that is short is short twice. Only the fullest of the four leaves metal enough over the mouth to feed the arm as it freezes; the verdicts of the others say what their feeder lacks, where the front lets them speak of it.',
    ]),
    sectionCell('low-sill', 'Low sill basin', armBehind({ length: 151, pit: 12, open: 80 }), 'charge-1'),
    metalCell(),
    tiltCell('steady-tilt', 'Steady, 15° a second', steady(20, 15)),
    ...charges,
    ...pours,
    compareCell(
      'four-fills',
      'Four fills',
      pours.map((pour) => pour.id),
      'inclination',
    ),
    note('try', 'Try it', [
      'Drag the basin floor down in the section: a deeper pit keeps the first flow where it is and asks for more metal. Drag it flush, and the fill level matters less.',
      'Start at 30° in place of 20° and see how much more the ladle may miss by.',
      'A charge may also be given by weight, or by the head wanted in the feeder; each gives the other two. On a real floor the weight is what the scale shows, and the level is what the caster sees.',
    ]),
    cautions('cautions'),
  ],
};
