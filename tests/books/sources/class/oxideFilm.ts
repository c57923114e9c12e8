import { armBehind, chargeCell, note, sectionCell, steady, tiltCell } from '../shop';
import { aims, classPour, FLUSH, guessCell, lesson, metal, PIT, tucked, WEIGHT } from './lesson';

export const oxideFilm = lesson('A skin on the metal, and how it gets inside', [
  aims('15', [
    'Liquid aluminium is never bare. Where it meets air it has a skin of oxide, thinner than a soap film, within moments. On top of the metal the skin does no harm. Folded under, it is a crack that was cast in: two dry faces that will not weld.',
    'This lesson asks one thing: **how fast may the front run before the surface folds its skin in?**',
  ]),
  note('sum', 'The sum', [
    'What holds a surface together is its tension, γ, helped by gravity, g; what tears it open is its speed. A puddle on a dry plate stands as high as tension can hold it up: h = 2 √(γ / ρ g). Metal that rises higher than that falls back over itself, and its skin is inside. The speed that lifts it so high is V = √(2 g h), which comes to **V = 2 (γ g / ρ)^¼**.',
    'For A356 the book takes γ = 0.865 N/m, the tension of an oxidised surface, and ρ = 2400 kg/m³. Step by step: 0.865 × 9.81 = 8.49; divided by 2400 is 0.00354; the root of that 0.0595; the root again 0.244; twice that **0.49 m/s**. The puddle: 2 × √(0.865 / (2400 × 9.81)) = 0.0121 m, **12 mm**. Dropping 12 mm gives 0.49 m/s: the same limit, told as a height.',
    'It is a fourth root, and so a forgiving one. A clean surface has γ = 1.10 N/m, a quarter more, and the limit rises by 6 % only, to 0.52 m/s. Two figures are honest: *half a metre a second*.',
  ]),
  sectionCell('flush-basin', 'Flush basin', armBehind(FLUSH), 'flush-charge'),
  metal(),
  tucked(tiltCell('uphill', 'From 30° uphill', steady(30, 15))),
  tucked(tiltCell('level', 'From level', steady(0, 15))),
  tucked(chargeCell('flush-charge', 'Behind the brink', 'flush-basin', 'uphill', WEIGHT)),
  guessCell(
    'guess-gentle',
    'Guess: the gentle pour',
    'front speed',
    ['gentle'],
    'The die starts 30° uphill and turns at 15° a second, and the metal climbs in from a flush basin. The arm is 200 mm long. How fast does the front run from the mouth to the end? The line is the limit of the sum above.',
  ),
  classPour('gentle', 'Gentle: climbing in', {
    section: 'flush-basin',
    charge: 'flush-charge',
    tilt: 'uphill',
  }),
  tucked(sectionCell('pit-basin', 'Pit behind a sill', armBehind(PIT), 'pit-charge')),
  tucked(chargeCell('pit-charge', 'The same weight in the pit', 'pit-basin', 'level', WEIGHT)),
  guessCell(
    'guess-falling',
    'Guess: the falling pour',
    'speed call',
    ['falling'],
    'The same arm, weight and turning. Now the metal lies in a pit behind a sill and the die starts level, so it has to wait until it can fall over the sill. Which side of 0.49 m/s does its front end on?',
  ),
  classPour('falling', 'Falling: over a sill', { section: 'pit-basin', charge: 'pit-charge', tilt: 'level' }),
  tucked(
    note('what-it-means', 'What it means, after your guesses', [
      'Go through the second pour with the slider under its picture. Each pin is a place where the surface folded, with its cause. The front over critical speed is only one of them: a wave that runs back over the metal coming in, two fronts that meet, a jet over the end wall fold skin as well, and some of them below the limit.',
      'So the limit is a gate, not a promise. **Below it the surface lacks the energy to fold by speed alone. Above it folding is possible, not certain.** How strong the casting then is depends on where the film ends up, which no computation of a flat section can say.',
      'Try it: in the metal, type γ = 1.10 N/m and see how little the limit moves. Then turn the gentle pour at 25 and at 40° a second.',
    ]),
  ),
]);
