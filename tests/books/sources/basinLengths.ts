import type { Book, Cell } from '$src/cells/kinds';
import { PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import { fromDegrees, fromMillimetres } from '$src/core/units';
import {
  armBehind,
  CASTING,
  cautions,
  chargeCell,
  compareCell,
  FEEDER_SHORT,
  metalCell,
  note,
  pourCell,
  sectionCell,
  steady,
  studyCell,
  tiltCell,
} from './shop';

/** Lengths of the flush basins [mm]; the roof reaches 65 mm back over each. */
const LENGTHS = [115, 150, 200] as const;
const ROOFED = 65;
/** [kg], the same in all three. */
const MASS = 0.696;

const sections: Cell[] = LENGTHS.map((length) =>
  sectionCell(
    `basin-${length}`,
    `Basin of ${length} mm`,
    armBehind({ length, pit: 0, open: length - ROOFED }),
    `charge-${length}`,
  ),
);
const charges: Cell[] = LENGTHS.map((length) =>
  chargeCell(`charge-${length}`, `0.696 kg behind ${length} mm`, `basin-${length}`, 'uphill', {
    by: 'mass',
    mass: MASS,
  }),
);
const pours: Cell[] = LENGTHS.map((length) =>
  pourCell(`pour-${length}`, `Poured from ${length} mm`, {
    section: `basin-${length}`,
    charge: `charge-${length}`,
    tilt: 'uphill',
  }),
);

export const basinLengths: Book = {
  title: 'The basin that is too long: three basins for one casting',
  casting: CASTING,
  cells: [
    note('what-to-look-at', 'What to look at', [
      'One hinge arm, one weight of metal, one tilt from 30° uphill. Only the basin differs: 115, 150 or 200 mm from the back wall to the mouth, all flush with the die floor. Everything in this book is invented.',
      'It is tempting to make the basin long: easier to ladle into, and it can never run over. But a long basin lets the same metal lie further from the mouth. It must be tilted further before the first of it arrives, and by then less uphill is left to hold it back.',
      'Before you read the comparison, look at the three sections and read off their first-flow angles. The pours only confirm them.',
    ]),
    ...sections,
    metalCell(),
    tiltCell('uphill', 'Uphill start, 15° a second', steady(30, 15)),
    ...charges,
    ...pours,
    compareCell(
      'three-basins',
      'Three basins, one arm',
      pours.map(({ id }) => id),
      'inclination',
    ),
    studyCell('curve', 'Front speed against basin length', `pour-${LENGTHS[0]}`, {
      axes: [{ setting: 'basin.length', from: fromMillimetres(105), to: fromMillimetres(225), points: 25 }],
      figure: 'peakFrontSpeed',
      meshCells: PREVIEW_MESH_CELLS,
      repeatability: [],
    }),
    studyCell('length-and-start', 'Basin length and start angle', `pour-${LENGTHS[0]}`, {
      axes: [
        { setting: 'basin.length', from: fromMillimetres(105), to: fromMillimetres(225), points: 20 },
        { setting: 'tilt.start', from: 0, to: fromDegrees(45), points: 20 },
      ],
      figure: 'peakFrontSpeed',
      meshCells: PREVIEW_MESH_CELLS,
      repeatability: [],
    }),
    note('why', 'Why length hurts', [
      'The wedge of metal behind the mouth is x² tan(φ)/2 for each unit of width: what fits under the brink at the start grows with the square of the length. A basin sized so that the charge stands just at the brink gives first flow as soon as the tilt begins. Each millimetre more puts it off.',
      'The map at the foot says what a steeper start buys back, and what it cannot. A machine that starts level needs a short basin more than any other; many basins are long only because the ladle is clumsy.',
      'A basin can be too short as well: the metal then stands in the die while it is still being ladled, and enters at the speed of the ladle, which is not computed here.',
      FEEDER_SHORT,
    ]),
    cautions('cautions'),
  ],
};
