import { armBehind, chargeCell, compareCell, note, sectionCell, steady, tiltCell } from '../shop';
import { aims, classPour, guessCell, lesson, metal, PIT, tucked, WEIGHT } from './lesson';

const POURS = ['flush', 'low', 'high'];

export const sillJet = lesson('Why a sill makes a jet', [
  aims('15', [
    'A sill between basin and die is easy to machine and keeps the metal back until the machine turns. Many dies have one. This lesson is about what it does with the metal it keeps.',
    'One arm, one weight, one start of 20° uphill, three basins: flush, a sill of 12 mm, and a longer pit behind a sill of 25 mm.',
  ]),
  sectionCell('high-sill', 'Sill of 25 mm', armBehind(PIT), 'high-charge'),
  metal(),
  tucked(tiltCell('tilt', 'From 20° uphill', steady(20, 12))),
  tucked(chargeCell('high-charge', 'Behind 25 mm', 'high-sill', 'tilt', WEIGHT)),
  guessCell(
    'guess-high',
    'Guess: the high sill',
    'front speed',
    ['high'],
    'The metal has to be lifted 25 mm over the sill before any of it enters. Draw the speed of its front along the arm.',
  ),
  classPour('high', 'Over 25 mm', { section: 'high-sill', charge: 'high-charge', tilt: 'tilt' }),
  tucked(
    sectionCell('low-sill', 'Sill of 12 mm', armBehind({ length: 115, pit: 12, open: 50 }), 'low-charge'),
  ),
  tucked(chargeCell('low-charge', 'Behind 12 mm', 'low-sill', 'tilt', WEIGHT)),
  tucked(sectionCell('flush-basin', 'Flush', armBehind({ length: 115, pit: 0, open: 50 }), 'flush-charge')),
  tucked(chargeCell('flush-charge', 'Flush, the same weight', 'flush-basin', 'tilt', WEIGHT)),
  guessCell(
    'guess-order',
    'Guess: three sills',
    'quickest',
    POURS,
    'Flush, 12 mm, and the longer pit behind 25 mm: the same arm, weight, start and turning. Whose front runs fastest?',
  ),
  classPour('flush', 'Flush', { section: 'flush-basin', charge: 'flush-charge', tilt: 'tilt' }),
  classPour('low', 'Over 12 mm', { section: 'low-sill', charge: 'low-charge', tilt: 'tilt' }),
  compareCell('three-sills', 'Three basins', POURS, 'inclination'),
  tucked(tiltCell('level-tilt', 'From level', steady(0, 12))),
  tucked(chargeCell('level-charge', 'The same weight, level', 'high-sill', 'level-tilt', WEIGHT)),
  guessCell(
    'guess-level',
    'Guess: started level',
    'speed call',
    ['level'],
    'Last, the sill of 25 mm on a machine that can only start level. Before you look: metal comes over the sill with the die some 10° downhill. How far below the sill does the end of a 200 mm arm lie then, and what speed does a fall of that height give?',
  ),
  classPour('level', 'Over 25 mm, started level', {
    section: 'high-sill',
    charge: 'level-charge',
    tilt: 'level-tilt',
  }),
  tucked(
    note('what-it-means', 'What it means, after your guesses', [
      'A sill does not throw metal; it **keeps it waiting**. While it waits the machine goes on turning, and the die end sinks. When metal comes over the sill at last it finds a slope, and falls down it as water falls down a chute.',
      'The sum: with the die axis at −10°, the end of a 200 mm arm lies 200 × sin 10° = 35 mm below the sill. Falling so far gives √(2 × 9.81 × 0.035) = 0.83 m/s. Friction and the depth of the stream take some of it; the computed front stays below that figure, and well over the limit. The height that gives just the limit is 12 mm: 200 mm of arm at −3½°. That is how little downhill is too much.',
      'The low sill keeps its front under the limit here, though not without folds of its own: at 20° uphill its metal still comes in while the die climbs. The height of the sill is not the fault in itself; the inclination at first flow is. Compare the rows of the three basins.',
      'The cure is not a slower machine: waited for longer, the metal still comes in downhill. It is a basin without a pit. A higher start alone is none either: turned further uphill the pit holds more, and the same metal comes over the sill no earlier. More metal in the pit comes over it earlier.',
      'Try it: in the section, drag the two corners of the basin floor up towards the die floor and watch the first flow under the picture.',
    ]),
  ),
]);
