import type { Book } from '$src/cells/kinds';
import { THIN_WALL, thinWall } from '$src/core/section/shapes';
import { RATE_RANGE } from '$src/core/tilt/range';
import { fromMillimetres } from '$src/core/units';
import { POUR_WINDOW } from '$src/report/study/pourWindow';
import {
  cautions,
  chargeCell,
  metalCell,
  note,
  pourCell,
  sectionCell,
  steady,
  studyCell,
  tiltCell,
} from './shop';

/** Up to where the slowest of these pours goes stiff. */
const [TIME, START] = POUR_WINDOW.axes;
const WINDOW = { ...POUR_WINDOW, axes: [{ ...TIME!, to: 30 }, START!] };

/** Quicker than a machine of the shop: the quick edge of the map lies past what that one reaches. */
const LIMITS = { quickest: RATE_RANGE.quickest };

const CASTING = 'Rain shield for a greenhouse vent, A356';

/** A wall of 4 mm behind the gate of the thin wall of the starting shapes. */
const WALL = thinWall({ ...THIN_WALL, wallHeight: fromMillimetres(4) });

export const thinWallWindow: Book = {
  title: 'Too slow is cold: the pour window of a 4 mm wall',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'The same three founders, another casting: a rain shield 180 mm long, 110 mm wide and 4 mm thick. Everything in this book is invented.',
      'A thin wall asks two things at once. Turned too quickly, the front runs over its critical speed and folds its skin. Turned too slowly, it freezes on the way and laps. What is left between the two is the **pour window**: start angle up the side, tilt time along the foot.',
      'Press *Pour this study* below. Each dot is a pour. Steep hatch folds film, level lines lap, blank paper is sound. The ring and cross is the setting of the pour above; the arrows say how far it may stray. Choose a point on the map and open it as a pour to see what happens there.',
    ]),
    sectionCell('wall', 'Wall of 4 mm', WALL, 'charge'),
    metalCell(),
    tiltCell('tilt', 'Steady, 12° a second', steady(30, 12, LIMITS)),
    chargeCell('charge', '25 mm of head', 'wall', 'tilt', { by: 'head', head: fromMillimetres(25) }),
    pourCell('pour', 'As it is set', { section: 'wall', charge: 'charge', tilt: 'tilt' }),
    studyCell('window', 'Pour window of the wall', 'pour', WINDOW),
    note('how-to-read', 'How to read it', [
      'The quick edge comes from the front speed, the oldest rule there is; the uncertainty beside it is what mesh and surface tension leave open. The map is made on a coarse mesh, so that four hundred pours take less than half a minute: open a point near an edge as a pour before you lean on it. The pour above is computed on a mesh four times as fine, and is as sound there.',
      'The slow edge comes from heat: what the coat lets through, how hot the die is, and how little metal a wall of 4 mm holds. It is the less certain of the two. The coat and the die temperature here are the defaults of the program; put in your own, and see how far the edge moves before you believe it. It is ragged, too: where the wall begins the metal waits until it stands high enough to press its skin through, and whether it waits long enough to lap hangs on how the basin rocks. Keep clear of a ragged edge; your first castings at the slow end are the check.',
      'The charge keeps its weight over the whole map. A flatter start therefore stands higher against the mouth when the tilt begins, as it does on the floor.',
    ]),
    note('try', 'Try it', [
      'Vary the basin length instead of the start angle. Vary the contact angle, which nobody has measured for your coat, and see how much of the window it moves.',
      'Type how far your own pours stray, from one to the next, beside each range: the dotted patch round the cross should lie within the blank paper.',
    ]),
    cautions('cautions'),
  ],
};
