import { THIN_WALL, thinWall } from '$src/core/section/shapes';
import { RATE_RANGE } from '$src/core/tilt/range';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import { chargeCell, note, sectionCell, steady, studyCell, tiltCell } from '../shop';
import { aims, classPour, guessCell, lesson, metal, tucked } from './lesson';

const WALL = thinWall(THIN_WALL);
const takes = (tilt: string) => ({ section: 'wall', charge: 'charge', tilt });

/** Quicker than a machine of the shop: the lesson swings in one and a half seconds, and its map reaches as far. */
const LIMITS = { quickest: RATE_RANGE.quickest };

/** Few points on a very coarse mesh: the map is there within seconds, and its edges are as coarse. */
const WINDOW = {
  axes: [
    { setting: 'tilt.time', from: 1.5, to: 34, points: 14 },
    { setting: 'tilt.start', from: fromDegrees(-10), to: fromDegrees(45), points: 7 },
  ],
  figure: 'peakFrontSpeed',
  meshCells: 80,
  repeatability: [],
} as const;

export const readWindow = {
  ...lesson('Too quick, too slow: reading a pour window', [
    aims('20', [
      'A rain shield, 5 mm thick. Turned too quickly its front folds its skin in; turned too slowly it freezes on the way. The map of what is left between is the **pour window**.',
      'First three pours, one by one. Then the map, where each of them is a single point.',
    ]),
    sectionCell('wall', 'Wall of 5 mm', WALL, 'charge'),
    metal(),
    tucked(tiltCell('middle-tilt', 'In 10 seconds', steady(30, 12.37, LIMITS))),
    tucked(tiltCell('quick-tilt', 'In 1½ seconds', steady(30, 100, LIMITS))),
    tucked(tiltCell('slow-tilt', 'In 30 seconds', steady(30, 4.04, LIMITS))),
    tucked(
      chargeCell('charge', '25 mm of head', 'wall', 'middle-tilt', { by: 'head', head: fromMillimetres(25) }),
    ),
    guessCell(
      'guess-quick',
      'Guess: in 1½ seconds',
      'speed call',
      ['quick'],
      'The machine swings from +30° to upright in one and a half seconds. Is the front under or over critical speed?',
    ),
    classPour('quick', 'In 1½ seconds', takes('quick-tilt')),
    guessCell(
      'guess-slow',
      'Guess: in 30 seconds',
      'filling',
      ['slow'],
      'Now it takes 30 seconds. Does the wall fill before its metal goes stiff?',
    ),
    classPour('slow', 'In 30 seconds', takes('slow-tilt')),
    guessCell(
      'guess-middle',
      'Guess: in 10 seconds',
      'filling',
      ['middle'],
      'And in 10 seconds? When you have given this guess the map below opens as well: press *Pour this study*.',
    ),
    classPour('middle', 'In 10 seconds', takes('middle-tilt')),
    studyCell('window', 'Pour window of the wall', 'middle', WINDOW),
    note('how-to-read', 'How to read it', [
      'Tilt time runs along the foot, start angle up the side. Every dot was computed as a pour; what lies between takes the nearest answer. Steep hatch folds film, level lines lap, blank paper is sound. The ring and cross is where the pour above stands.',
      '**Find your three pours** on the line of +30°: 1½ seconds in the hatch, 30 seconds among the level lines, 10 seconds between. Then press a point anywhere and open it as a pour.',
      'Read three things off a window. *How wide* it is along the foot: that is how much the machine may stray in time. *Where you stand in it*: nearer the quick edge or the slow one. *Which way it leans*: does an uphill start widen it?',
      'The two edges are not equally sure. The quick edge rests on the front speed and the sum of the first lesson. The slow edge rests on heat: coat and die temperature here are the defaults of the program, not measured on your die. And a map of 98 points on a coarse mesh has coarse edges: before you lean on a point near one, open it as a pour with 400 mesh cells.',
    ]),
  ]),
  casting: 'Rain shield for a greenhouse vent, A356',
};
