import type { Book } from '$src/cells/kinds';
import { BENCH_MACHINE, type Machine } from '$src/core/tilt/machine/machine';
import { DEFAULT_LIMITS } from '$src/core/tilt/range';
import type { Tilt } from '$src/core/tilt/tilt';
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

/** The bench machine with its valve open by so many turns, let go at 30\u00b0. */
function valveOpen(open: number): Tilt {
  const { valve } = BENCH_MACHINE;
  const machine: Machine =
    valve.by === 'turns' ? { ...BENCH_MACHINE, valve: { ...valve, open } } : BENCH_MACHINE;
  return { kind: 'machine', start: fromDegrees(30), end: fromDegrees(-90), limits: DEFAULT_LIMITS, machine };
}

export const settingDamper: Book = {
  title: 'Setting the damper',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'This machine has no drive. It is let go at 30\u00b0 uphill, falls under its own weight, and an oil damper holds it back. What the founder sets is a needle valve.',
      'Two pours of one arm differ in nothing but that valve: open by one and a half turns, and by half a turn. Drag the opening in either tilt cell: the curve follows, without metal. The pours turn the machine under their own metal.',
      'The rate is not even over the stroke. The arm of the weights and the arm of the damper both change as the body turns; the picture of the linkage shows why.',
    ]),
    sectionCell('flush-basin', 'Flush basin', armBehind(WIDE_FLUSH), 'charge'),
    metalCell(),
    chargeCell('charge', 'Arm and feeder', 'flush-basin', 'open', { by: 'mass', mass: FED }),
    tiltCell('open', 'One and a half turns', valveOpen(1.5)),
    tiltCell('nearly-shut', 'Half a turn', valveOpen(0.5)),
    pourCell('pour-open', 'One and a half turns', { section: 'flush-basin', charge: 'charge', tilt: 'open' }),
    pourCell('pour-shut', 'Half a turn', {
      section: 'flush-basin',
      charge: 'charge',
      tilt: 'nearly-shut',
    }),
    compareCell('two-settings', 'Two settings of one valve', ['pour-open', 'pour-shut'], 'inclination'),
    note('try', 'Try it', [
      'Half a turn is near the limit: what comes back from the end wall is marked. Shut the valve to three tenths of a turn, and the pour is sound. It leaves little to spare: with the oil at 5 \u00b0C the same three tenths are so slow that the metal goes stiff before the arm is full.',
      "Cool the oil to 5 \u00b0C in the tilt cell: the same half turn is another machine on a cold morning. Note the oil's temperature beside the valve setting on every shop card.",
      'The masses, places and valve here are invented. Weigh yours and measure your linkage, then check one dry run with a phone on the cool frame before believing any curve.',
    ]),
    cautions('cautions'),
  ],
};
