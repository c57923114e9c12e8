import type { Book, Cell } from '$src/cells/kinds';
import { fromCelsius, fromDegrees } from '$src/core/units';
import { type CastingRow, EMPTY_ROW, NO_FAULTS } from '$src/report/castings/casting';
import { classPour, FLUSH, PIT, WEIGHT } from './class/lesson';
import {
  armBehind,
  CASTING,
  cautions,
  chargeCell,
  FEEDER_SHORT,
  metalCell,
  note,
  sectionCell,
  steady,
  tiltCell,
} from './shop';

const batch = (
  date: string,
  pour: string,
  good: number,
  bad: Partial<CastingRow['bad']>,
  run: Partial<CastingRow> = {},
): CastingRow => ({ ...EMPTY_ROW, date, pour, good, bad: { ...NO_FAULTS, ...bad }, ...run });

/** Invented, like everything in the books: three weeks of hinge arms. */
const CASTINGS: readonly CastingRow[] = [
  batch('week 1, Monday', 'old-way', 13, { fold: 6, gas: 1 }, { startAngle: 0, tiltTime: 6.3, mass: 0.7 }),
  batch(
    'week 1, Thursday',
    'old-way',
    16,
    { fold: 5, shrinkage: 1 },
    { startAngle: 0, tiltTime: 6.2, metalTemperature: fromCelsius(690), remark: 'furnace low' },
  ),
  batch(
    'week 2, Tuesday',
    'new-way',
    21,
    { fold: 1, lap: 1 },
    { startAngle: fromDegrees(30), tiltTime: 8.4, dieTemperature: fromCelsius(340) },
  ),
  batch(
    'week 2, Friday',
    'new-way',
    19,
    { shrinkage: 1 },
    { startAngle: fromDegrees(24), remark: 'stop not reset after cleaning' },
  ),
  batch(
    'week 3, Monday',
    'new-quick',
    11,
    { fold: 2, gas: 2 },
    { startAngle: fromDegrees(30), tiltTime: 4.9 },
  ),
];

const log: Cell = {
  id: 'log',
  name: 'Three weeks of arms',
  folded: false,
  kind: 'castings',
  castings: CASTINGS,
  counted: 'fold',
  against: 'front speed',
};

export const castingsLog: Book = {
  title: 'What the castings say: a log against the prediction',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'A prediction is worth what the castings say of it. The three founders write down what they pour: how it was run, how many came out good, and what was wrong with the rest. The numbers are invented.',
      'Each row belongs to a pour of the book. The chart sets the share of castings with a fault against what the pour predicted, with the range that so few castings leave open.',
      'Read the sentence first. It compares the two pours at the ends of the prediction, and only those; whatever overlaps is not claimed. The pour in the middle has 15 castings: see how little 15 can say.',
    ]),
    sectionCell('pit-basin', 'Pit behind a sill', armBehind(PIT), 'pit-charge'),
    sectionCell('flush-basin', 'Flush basin', armBehind(FLUSH), 'flush-charge'),
    metalCell(),
    tiltCell('level', 'From level', steady(0, 15)),
    tiltCell('uphill', 'From 30° uphill', steady(30, 15)),
    tiltCell('uphill-quick', 'From 30° uphill, quicker', steady(30, 26)),
    chargeCell('pit-charge', 'To the sill', 'pit-basin', 'level', WEIGHT),
    chargeCell('flush-charge', 'At the brink', 'flush-basin', 'uphill', WEIGHT),
    classPour('old-way', 'The old way', { section: 'pit-basin', charge: 'pit-charge', tilt: 'level' }),
    classPour('new-way', 'The new way', { section: 'flush-basin', charge: 'flush-charge', tilt: 'uphill' }),
    classPour('new-quick', 'The new way, quicker', {
      section: 'flush-basin',
      charge: 'flush-charge',
      tilt: 'uphill-quick',
    }),
    log,
    note('what-it-says', 'What it says, and what not', [
      'Folds and oxide go with the front speed here: the new way may lose anything up to 12 in a hundred to them, the old way 15 to 41, and the two ranges do not touch. They go *together*. The basin, the start and the week changed at once, so the log alone cannot say which of them did it.',
      'Set the count to laps: nothing can be told apart, and the sentence says how many castings it would take. That is no failure of the log. It keeps a shop from changing a die over three castings.',
      'A row run otherwise than its pour says so under it. Its castings are counted all the same: leave them out, or give them a pour of their own, as you think right, but decide before you look at the result.',
      FEEDER_SHORT,
      'Two of the hundred castings of this log are put down to shrinkage, one of each way: too few to say anything of it. A feeder that is short need not show in every casting.',
    ]),
    cautions('cautions'),
  ],
};
