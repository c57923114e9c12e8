import type { Book } from '$src/cells/kinds';
import { fromMillimetres } from '$src/core/units';
import {
  armBehind,
  CASTING,
  cardCell,
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
  WIDE_BASIN,
  WIDE_FLUSH,
} from './shop';

export const levelOrUphill: Book = {
  title: 'Level start against uphill start',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'A shop of three casts hinge arms for greenhouse vents. One arm, one weight of metal, three ways to pour it. Everything in this book is invented.',
      '**Level, over a sill.** The basin is a pit behind a lip, filled to 1 mm under the lip, and the machine starts level and turns at 12° a second. The metal waits until the die already runs downhill. Then it falls.',
      '**Uphill, flush basin.** The die starts 30° uphill, and the floor runs straight from the basin into the arm. The metal stands near the brink before anything moves, so it soon climbs in and stays one level surface. The machine turns slowly past level, while the front comes home, and hurries afterwards; all in all it takes no longer than the level one. This is the pour to copy: it is sound, and stays so when charge, start and rate stray as a shop lets them.',
      '**Uphill, over the same sill.** The good start with the bad basin. Before you play it, guess which of the other two it will resemble.',
      'Go to the comparison at the foot and step the three pours by inclination. Watch *where the die lies when metal first passes the mouth*: all the rest follows from that.',
    ]),
    sectionCell(
      'sill-basin',
      'Sill basin',
      armBehind({ ...WIDE_BASIN, length: 188, pit: 29, open: 123 }),
      'to-the-lip',
    ),
    sectionCell('flush-basin', 'Flush basin', armBehind(WIDE_FLUSH), 'same-weight'),
    metalCell(),
    tiltCell('level-start', 'Level start', steady(0, 12, { highestStart: 0 })),
    tiltCell('uphill-start', 'Uphill start', staged(30, SLOW_PAST_LEVEL)),
    chargeCell('to-the-lip', 'To the lip of the sill', 'sill-basin', 'level-start', {
      by: 'fill level',
      fromLip: fromMillimetres(-1),
    }),
    chargeCell('same-weight', 'The same weight, flush', 'flush-basin', 'uphill-start', {
      by: 'mass',
      mass: FED,
    }),
    pourCell('level-sill', 'Level, over a sill', {
      section: 'sill-basin',
      charge: 'to-the-lip',
      tilt: 'level-start',
    }),
    pourCell('uphill-flush', 'Uphill, flush basin', {
      section: 'flush-basin',
      charge: 'same-weight',
      tilt: 'uphill-start',
    }),
    pourCell('uphill-sill', 'Uphill, over the same sill', {
      section: 'sill-basin',
      charge: 'to-the-lip',
      tilt: 'uphill-start',
    }),
    compareCell(
      'three-starts',
      'Three starts, one arm',
      ['level-sill', 'uphill-flush', 'uphill-sill'],
      'inclination',
    ),
    note('why', 'Why the start angle alone does not save it', [
      'Turned uphill, the pit holds *more*, not less: the metal sinks to the back wall and the lip stands high over it. It comes over the lip at nearly the same inclination as from a level start, 7 to 8° downhill, and falls as far; by then this machine hurries, and the front runs the faster for it. A good start needs both: an uphill die **and** a basin that holds the whole charge at the brink, without a pit.',
      'The flush basin is sized for that. At +30° the wedge of metal behind the mouth ends within 10 mm under the brink. At −90° the roofed part of the basin has become the feeder and holds all that is left, none runs out.',
      'A quiet front is half of a sound casting: **the basin is the feeder too.** Arm and feeder draw some 34 cm³ as they cool and freeze. The feeder here can give about 41, and it stays liquid 1.7 times as long as the thickest part of the arm, where 1.2 is wanted. That is why the ladle brings 1.2 kg for an arm of half a kilo, and why the basin is as wide as it is. Ladle 0.9 kg in its place: the metal lies lower, comes later and is near a limit, and the feeder lacks some 3 cm³.',
      'Over the sill the feeder is as large, and it does not help. A feeder makes up for shrinkage; a folded skin stays in.',
      'The roof of the feeder is higher than the arm, so gas can leave over the metal while the arm fills; what is left goes out by the vent at the boss.',
      'Many machines cannot start above level (the level tilt here says so in its limits). What that costs is the difference between the first two columns.',
    ]),
    note('how-sure', 'How sure is this?', [
      'The metal has to build up to its capillary stand, 8 to 12 mm, before the front moves on; how wetting a coated die really is, nobody has measured for you. Every full run is therefore repeated at both ends: without any stand, and with metal that does not wet at all.',
      'Over the sill this decides *when* the metal comes. With the stand it waits to 7 or 8° downhill and comes as a flood. Without it, a thin sheet runs ahead soon after level; tilted slowly, that sheet is so thin that its front speed means little. What does not depend on it: the flush basin has metal in the die while the die still runs uphill, and the sill has not.',
      'Try it: switch the capillary stand off in a pour, or slow the level tilt to 5 or 2° a second. With the stand, a slower tilt makes the fall over the sill a little gentler, never gentle; at 2° a second the arm no longer fills before its metal goes stiff.',
    ]),
    cardCell('card', 'For the next shift', 'uphill-flush'),
    cautions('cautions'),
  ],
};
