import { armBehind, chargeCell, compareCell, note, sectionCell, steady, tiltCell } from '../shop';
import {
  afterGuess,
  aims,
  classPour,
  FLUSH,
  guessCell,
  lesson,
  metal,
  ownGuessCell,
  PIT,
  tucked,
  WEIGHT,
} from './lesson';

export const uphill = lesson('Uphill first: where the die lies when metal comes in', [
  aims('15', [
    'Water poured down a slope runs away from you; water raised slowly up a slope stays one level sheet. Tilt pouring can do either with the same die. What decides is **how the die lies at the moment when metal first passes the mouth**: the *first flow*.',
    'Guess each pour before you open it. Uphill is positive: +20° means the die climbs away from the basin.',
  ]),
  sectionCell('pit-basin', 'Pit behind a sill', armBehind(PIT), 'pit-charge'),
  metal(),
  tucked(tiltCell('level', 'From level', steady(0, 15))),
  tucked(tiltCell('uphill', 'From 30° uphill', steady(30, 15))),
  tucked(chargeCell('pit-charge', 'To the sill', 'pit-basin', 'level', WEIGHT)),
  guessCell(
    'guess-level',
    'Guess: level start',
    'first flow',
    ['level-pit'],
    'The metal lies in the pit, just under the sill, and the machine starts level. How does the metal come in?',
  ),
  classPour('level-pit', 'Level, from the pit', {
    section: 'pit-basin',
    charge: 'pit-charge',
    tilt: 'level',
  }),
  tucked(sectionCell('flush-basin', 'Flush basin', armBehind(FLUSH), 'flush-charge')),
  tucked(chargeCell('flush-charge', 'At the brink', 'flush-basin', 'uphill', WEIGHT)),
  guessCell(
    'guess-uphill',
    'Guess: uphill start',
    'first flow',
    ['uphill-flush'],
    'Now the floor runs straight from the basin into the die, and the die starts 30° uphill with the metal standing at the brink. How does it come in?',
  ),
  classPour('uphill-flush', 'Uphill, flush basin', {
    section: 'flush-basin',
    charge: 'flush-charge',
    tilt: 'uphill',
  }),
  guessCell(
    'guess-mixed',
    'Guess: half of the cure',
    'quickest',
    ['level-pit', 'uphill-flush', 'uphill-pit'],
    'A third founder keeps the pit but starts 30° uphill. Of the three pours, whose front runs fastest?',
  ),
  classPour('uphill-pit', 'Uphill, from the pit', {
    section: 'pit-basin',
    charge: 'pit-charge',
    tilt: 'uphill',
  }),
  compareCell('three', 'The three side by side', ['level-pit', 'uphill-flush', 'uphill-pit'], 'inclination'),
  ownGuessCell(
    'guess-why',
    'Guess: why half a cure is none',
    'The third founder wonders: the machine started 30° uphill, and from the pit the metal came no sooner for it. Why? This answer is no computed one: whoever wrote the lesson stands for it.',
    {
      answers: [
        'Turned uphill the pit holds more: the metal sinks to the back wall, and the sill stands high over it',
        'The machine turned too quickly from so steep a start for the metal to follow',
        'The sill cools the metal until it hardly flows',
      ],
      right: 0,
      reason:
        'Uphill the metal lies against the back wall, well under the sill, and the die has turned back past level before it stands at the sill again. Rate and warmth are the same in both pours from the pit.',
    },
  ),
  afterGuess(
    'guess-why',
    note('what-it-means', 'What it means', [
      'From the flush basin metal is in the die while the die still climbs. Every millimetre it gains it has to be lifted, so it comes as a level surface, pushed and not falling.',
      'From the pit it makes little odds where the machine starts. Turned uphill a pit holds *more*, not less; the metal waits behind the sill until the die points down, and then falls the whole way. **An uphill start needs a basin that lets the metal go uphill.**',
      'Why not start steeper still? The basin must hold the whole charge behind the mouth at the start, and a steep basin is a deep one. Drag the charge level in the section to see what fits.',
      'Try it: in the menu of the uphill pour choose *Duplicate with its inputs* and give the copy a start of 20°, then 10°. At which start does metal stand in the die before the machine moves? That metal went in at the speed of the ladle, which nobody controls.',
    ]),
  ),
]);
