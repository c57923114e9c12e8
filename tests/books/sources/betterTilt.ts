import type { Book } from '$src/cells/kinds';
import { readRows } from '$src/core/tilt/measured/readRows';
import { repeatsOf } from '$src/core/tilt/measured/repeats';
import { PLAIN_TREATMENT, treatReadings } from '$src/core/tilt/measured/treatReadings';
import { WIDEST_LIMITS } from '$src/core/tilt/range';
import type { MachineLimits, Tilt } from '$src/core/tilt/tilt';
import { fromDegrees } from '$src/core/units';
import {
  armBehind,
  CASTING,
  cautions,
  chargeCell,
  compareCell,
  FED,
  metalCell,
  note,
  pourCell,
  sectionCell,
  tiltCell,
  WIDE_FLUSH,
} from './shop';

/** What the machine of the shop does: no quicker than this. */
const LIMITS: MachineLimits = { ...WIDEST_LIMITS, quickest: fromDegrees(60) };

/**
 * Readings as a phone on the cool frame would write them, invented: rest at 30°, a swing that gathers way, a damper
 * that takes hold late, rest at −90°; 25 readings a second with a little scatter. Each repeat a little quicker or slower.
 */
function phoneFile(time: number, phase: number): string {
  const rows = Array.from({ length: Math.round((time + 2) * 25) }, (_, i) => {
    const at = i / 25;
    const share = Math.min(1, Math.max(0, (at - 1) / time));
    const turned = share ** 1.7 * (1 + 1.4 * (1 - share) * share);
    const scatter = 0.12 * Math.sin(37 * at + phase) + 0.08 * Math.sin(91 * at + 2 * phase);
    return `${at.toFixed(2)};${(30 - 120 * Math.min(1, turned) + scatter).toFixed(2)}`.replaceAll('.', ',');
  });
  return ['time (s);angle (°)', ...rows].join('\n');
}

function measuredTilt(): Tilt {
  const treated = [phoneFile(3.1, 0.3), phoneFile(3.2, 1.1), phoneFile(3.35, 2.4)].map((text) => {
    const read = readRows(text);
    if ('issues' in read) throw new Error('The invented file cannot be read.');
    return treatReadings(read.rows, PLAIN_TREATMENT);
  });
  const { typical, band } = repeatsOf(treated);
  const origin =
    'Invented: three dry runs told by a phone on the cool frame, 25 readings a second, decimal comma. The middle one by its time.';
  const { start, knots, readings } = typical;
  return { kind: 'measured', start, knots, limits: LIMITS, origin, readings, ...(band ? { band } : {}) };
}

const frontLed: Tilt = {
  kind: 'front-led',
  start: fromDegrees(30),
  end: fromDegrees(-90),
  limits: { ...LIMITS, quickest: fromDegrees(20) },
  share: 0.4,
  homeWithin: null,
};

export const betterTilt: Book = {
  title: 'From a measured tilt to a better one',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'A phone lay on the cool frame during three dry runs. **As measured** is the middle one of the three: the body gathers way, and the damper takes hold late.',
      'Pour it: the front runs over the critical speed and folds its skin. Nothing about section, charge or start is wrong. It is the turning.',
      '**Front-led** asks for a front at 40 % of critical instead, and never more than 20° a second. The rate at each inclination follows from the level fill; then it is run, and slowed where the front overshot. The cell shows the front before and after, and tells the tilt in a few stages. So poured the arm is sound, and the feeder has enough for it.',
    ]),
    sectionCell('flush-basin', 'Flush basin', armBehind(WIDE_FLUSH), 'charge'),
    metalCell(),
    chargeCell('charge', 'Arm and feeder', 'flush-basin', 'measured', { by: 'mass', mass: FED }),
    tiltCell('measured', 'As measured', measuredTilt()),
    pourCell('pour-measured', 'As measured', {
      section: 'flush-basin',
      charge: 'charge',
      tilt: 'measured',
    }),
    tiltCell('front-led', 'Front-led', frontLed),
    pourCell('pour-front-led', 'Front-led', {
      section: 'flush-basin',
      charge: 'charge',
      tilt: 'front-led',
    }),
    compareCell(
      'before-and-after',
      'As measured against front-led',
      ['pour-measured', 'pour-front-led'],
      'filled share',
    ),
    note('try', 'Try it', [
      'Ask “How sure is this?” of the measured pour: its rate and start are varied by what the three repeats strayed.',
      'Take the stages of the front-led tilt and run the pour again. A hand cannot follow a curve; it can follow a few stages, a little coarser. The cell says by how many degrees.',
      'The readings here are invented. Put a phone on your own cool frame, never on a hot die, and measure an empty machine first.',
    ]),
    cautions('cautions'),
  ],
};
