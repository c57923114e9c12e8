import type { Cell } from '$src/cells/kinds';
import { fromMillimetres } from '$src/core/units';
import { armBehind, chargeCell, compareCell, note, sectionCell, steady, tiltCell } from '../shop';
import { aims, classPour, guessCell, lesson, metal, tucked } from './lesson';

/** Fill level under the lip at the start [mm]. */
const LEVELS = [1, 12, 18] as const;

const charge = (below: number): Cell =>
  tucked(
    chargeCell(`charge-${below}`, `${below} mm under the lip`, 'low-sill', 'tilt', {
      by: 'fill level',
      fromLip: fromMillimetres(-below),
    }),
  );
const pour = (below: number): Cell =>
  classPour(`fill-${below}`, `Filled to ${below} mm under`, {
    section: 'low-sill',
    charge: `charge-${below}`,
    tilt: 'tilt',
  });
const POURS = LEVELS.map((below) => `fill-${below}`);

export const ladle = lesson('A short ladle: fill height and first flow', [
  aims('10', [
    'A caster with a tired arm leaves the basin a little short. Nothing else changes: the same die, basin, start and turning. Does it matter?',
    'The basin here has a low sill, 12 mm. It is filled to 1, 12 or 18 mm under its lip, at a start of 20° uphill. All three fill the arm.',
  ]),
  sectionCell('low-sill', 'Low sill basin', armBehind({ length: 151, pit: 12, open: 80 }), 'charge-1'),
  metal(),
  tucked(tiltCell('tilt', 'From 20° uphill', steady(20, 13))),
  ...LEVELS.map(charge),
  guessCell(
    'guess-full',
    'Guess: filled to the lip',
    'first flow',
    ['fill-1'],
    'The level stands 1 mm under the lip. How does the metal come in?',
  ),
  pour(1),
  guessCell(
    'guess-short',
    'Guess: a ladle short',
    'first flow',
    ['fill-18'],
    'Now the level stands 18 mm under the lip. How does the metal come in?',
  ),
  pour(18),
  guessCell(
    'guess-quickest',
    'Guess: the fastest front',
    'quickest',
    POURS,
    'More metal pushes harder; less metal comes later. Of the three fills, which front runs fastest?',
  ),
  pour(12),
  compareCell('three-fills', 'Three fills', POURS, 'inclination'),
  tucked(
    note('what-it-means', 'What it means, after your guesses', [
      'The lower the level, the further the machine has to turn before metal reaches the lip, and the less uphill is left. That is all. The metal that comes later comes down a slope, and **what runs downhill runs fast**: less metal, more speed.',
      'Read the row of first flow in the comparison, then the row of peak front speed under it. They go opposite ways. Where the speed crosses the limit is the ladling tolerance of this basin, in millimetres.',
      'How much that is leans on the capillary stand, the 8 to 12 mm that metal with a skin must pile up before its edge moves on. It is assumed, not measured. That a lower fill comes in later and runs faster does not depend on it.',
      'Try it: start at 30° in place of 20°. The front is quieter, and the charge says why: the same level now takes 1.2 kg in place of 0.8. Type the old weight in place of the level, and the short ladle is not forgiven: from a higher start the same metal comes over the sill where it came before.',
    ]),
  ),
]);
