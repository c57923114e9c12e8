import { armBehind, chargeCell, compareCell, note, sectionCell, staged, steady, tiltCell } from '../shop';
import { aims, classPour, FLUSH, guessCell, lesson, metal, tucked, WEIGHT } from './lesson';

const POURS = ['even', 'slow-first', 'quick-first'];
const takes = (tilt: string) => ({ section: 'flush-basin', charge: 'charge', tilt });

export const pastLevel = lesson('Slow past level, quick afterwards', [
  aims('15', [
    'The start is right: 30° uphill, a flush basin, the metal at the brink. Now the machine has to turn 120°, and the shop will give it seven and a half seconds. **Where in the stroke should the time go?**',
    'Three ways to spend it. *Even*: one rate throughout. *Slow first*: 8° a second until the die is 5° past level, then 30. *Quick first*: 30° a second until the same place, then 14.',
  ]),
  sectionCell('flush-basin', 'Flush basin', armBehind(FLUSH), 'charge'),
  metal(),
  tucked(chargeCell('charge', 'At the brink', 'flush-basin', 'even-tilt', WEIGHT)),
  tucked(tiltCell('even-tilt', 'Even', steady(30, 16.7))),
  tucked(
    tiltCell(
      'slow-first-tilt',
      'Slow first',
      staged(30, [
        [-5, 8],
        [-90, 30],
      ]),
    ),
  ),
  tucked(
    tiltCell(
      'quick-first-tilt',
      'Quick first',
      staged(30, [
        [-5, 30],
        [-90, 14],
      ]),
    ),
  ),
  guessCell(
    'guess-even',
    'Guess: the even tilt',
    'front speed',
    ['even'],
    'At one steady rate: draw the front speed from mouth to end. Does it rise, fall, or stay?',
  ),
  classPour('even', 'Even', takes('even-tilt')),
  guessCell(
    'guess-quickest',
    'Guess: where the time goes',
    'quickest',
    POURS,
    'All three take the same time. Whose front runs fastest?',
  ),
  classPour('slow-first', 'Slow first', takes('slow-first-tilt')),
  classPour('quick-first', 'Quick first', takes('quick-first-tilt')),
  compareCell('three-tilts', 'Three tilts, the same seven and a half seconds', POURS, 'inclination'),
  tucked(
    note('what-it-means', 'What it means, after your guesses', [
      'While the die climbs and passes level, the front is free: there is empty floor before it, and every degree the machine turns sends metal along it. Once the front has reached the end wall the arm fills from there, and turning quickly only stands it upright.',
      'So the seconds belong to the first third of the stroke. The slow first tilt has the slowest front of the three and is upright no later. The quick first tilt saves its time exactly where it costs most.',
      'Step the comparison by inclination to −10°: in all three the front is home. Whatever was going to fold has folded by then, and what is done afterwards hardly matters to the front.',
      'The price of slowness is warmth. The slow first pour has some three seconds left before its coldest metal would go stiff, the other two four and more. A thinner arm or a colder die would forgive less: the lesson on the pour window is about that.',
      'Try it: hurry the slow tilt sooner, at 0° and at +5° in place of −5°. When does the front begin to notice?',
    ]),
  ),
]);
