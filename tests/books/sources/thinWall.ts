import type { Book } from '$src/cells/kinds';
import { PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import type { Section } from '$src/core/section/section';
import { THIN_WALL, thinWall } from '$src/core/section/shapes';
import { RATE_RANGE } from '$src/core/tilt/range';
import { fromDegrees, fromMillimetres } from '$src/core/units';
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

/** From what folds to what goes stiff; starts from level, where this basin cannot hold its charge back, upwards. */
const TIME = { setting: 'tilt.time', from: 2, to: 30, points: 20 } as const;
const START = { setting: 'tilt.start', from: 0, to: fromDegrees(45), points: 19 } as const;
const WINDOW = { ...POUR_WINDOW, axes: [TIME, START] };

/** [kg], from a feeder that is short to one that is more than enough. */
const CHARGE = { setting: 'charge.mass', from: 0.36, to: 0.66, points: 16 } as const;
const METAL = 0.54;

/** Quicker than a machine of the shop: the quick edge of the map lies past what that one reaches. */
const LIMITS = { quickest: RATE_RANGE.quickest };

const CASTING = 'Rain shield for a greenhouse vent, A356';

/** A wall of 4 mm behind the gate of the thin wall of the starting shapes, and a roof over the mouth high enough for a feeder. */
const WALL = roofRaised(
  thinWall({
    ...THIN_WALL,
    basinLength: fromMillimetres(110),
    roofReach: fromMillimetres(55),
    wallHeight: fromMillimetres(4),
  }),
  fromMillimetres(35),
);

/** The basin's roof at another height: under one no higher than the gate the feeder freezes as soon as the gate does. */
function roofRaised(section: Section, height: number): Section {
  const [back, rim, throat, ...die] = section.roof;
  const under = [throat!.x, section.mouth].map((x) => ({ x, y: height }));
  return { ...section, roof: [back!, rim!, ...under, { x: section.mouth, y: throat!.y }, ...die] };
}

export const thinWallWindow: Book = {
  title: 'Too slow is cold: the pour window of a 4 mm wall',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'The same three founders, another casting: a rain shield 180 mm long, 110 mm wide and 4 mm thick. Everything in this book is invented.',
      'A thin wall asks two things at once. Turned too quickly, the front runs over its critical speed and folds its skin. Turned too slowly, it freezes on the way and laps. What is left between the two is the **pour window**: start angle up the side, tilt time along the foot.',
      'Press *Pour this study* below. Each dot is a pour. Steep hatch folds film, level lines lap, blank paper is sound. The ring and cross is the setting of the pour above; the arrows say how far it may stray. Choose a point on the map and open it as a pour to see what happens there.',
      'A third thing is asked of the basin: what stays in it over the mouth is the **feeder**. The second map varies the charge, and tells where that is too little.',
    ]),
    sectionCell('wall', 'Wall of 4 mm', WALL, 'charge'),
    metalCell(),
    tiltCell('tilt', 'Steady, 13° a second', steady(30, 13, LIMITS)),
    chargeCell('charge', 'Wall and feeder', 'wall', 'tilt', { by: 'mass', mass: METAL }),
    pourCell('pour', 'As it is set', { section: 'wall', charge: 'charge', tilt: 'tilt' }),
    studyCell('window', 'Pour window of the wall', 'pour', WINDOW),
    note('how-to-read', 'How to read it', [
      'The quick edge comes from the front speed, the oldest rule there is; the uncertainty beside it is what mesh and surface tension leave open. The map is made on a coarse mesh, so that four hundred pours take less than half a minute: open a point near an edge as a pour before you lean on it. The pour above is computed on a mesh four times as fine, and is as sound there.',
      'The slow edge comes from heat: what the coat lets through, how hot the die is, and how little metal a wall of 4 mm holds. It is the less certain of the two. The coat and the die temperature here are the defaults of the program; put in your own, and see how far the edge moves before you believe it. It is ragged, too: where the wall begins the metal waits until it stands high enough to press its skin through, and whether it waits long enough to lap hangs on how the basin rocks. Keep clear of a ragged edge; your first castings at the slow end are the check.',
      'The charge keeps its weight over the whole map. A flatter start therefore stands higher against the mouth when the tilt begins, as it does on the floor. Below some 8° the basin cannot hold it back: metal is in the die while it is still being ladled, and nothing of that is computed.',
    ]),
    studyCell('charge-and-time', 'Charge against tilt time', 'pour', {
      axes: [TIME, CHARGE],
      figure: 'peakFrontSpeed',
      meshCells: PREVIEW_MESH_CELLS,
      repeatability: [],
    }),
    note('the-feeder', 'How much to ladle', [
      'The wall itself takes a quarter of a kilo. All that is ladled beyond it stands over the mouth when the die is upright, and is what the wall, its gate and the feeder itself draw on while they freeze.',
      '**Too little, and the feeder is short.** Up to some 0.48 kg the front is as quiet as it is further up, and the map calls it sound, which it says of the filling. The line under the map counts the points whose feeder cannot feed, and each of them tells what it lacks: the casting would draw beside the gate. From 0.5 kg on it is enough.',
      '**Too much is no help.** It is melted, poured and cut off again. And from some 0.76 kg the basin cannot hold upright what the die does not take: metal runs over the rim, a hazard before it is a loss. The map ends well before that; it follows each pour only until the die is full, and a pour of its own tells what is spilled later.',
      'So the charge has a window as the tilt has, and the two are one window in three directions. The pour above is set at 0.54 kg and nine and a half seconds, clear of every edge by more than a ladle or a damper strays.',
      'More metal is not what made this feeder work. Under a roof no higher than the gate it would freeze as soon as the gate does, however much is ladled. The roof over the mouth stands at 35 mm for that: a feeder must be thicker than what it feeds. Lower it to 12 mm in the section: what no longer fits under it runs over the rim, and the line of the feeder among the figures of the pour falls to 1.0 times the time of the die, where 1.2 is wanted.',
    ]),
    note('try', 'Try it', [
      'Vary the basin length instead of the start angle. Vary the contact angle, which nobody has measured for your coat, and see how much of the window it moves.',
      'Type how far your own pours stray, from one to the next, beside each range: the dotted patch round the cross should lie within the blank paper.',
    ]),
    cautions('cautions'),
  ],
};
