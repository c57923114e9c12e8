import { fromMillimetres } from '$src/core/units';
import { FIRST_SIZE } from './firstSize';
import type { Section } from './section';
import {
  flushBasin,
  HINGE_ARM,
  hingeArm,
  pitBehindSill,
  TAPERED_LEVER,
  THIN_WALL,
  taperedLever,
  thinWall,
} from './shapes';

const mm = fromMillimetres;

/** A section to begin from: what it is called, what it is, and its outline. */
export interface StartingShape {
  readonly name: string;
  readonly meaning: string;
  readonly make: () => Section;
  /** It is there to be seen failing: no charge both fills its die and feeds it. */
  readonly isBadExample: boolean;
}

/**
 * Sizes whose first charge fills the die and feeds it: about as much metal over the mouth, under a roof that is higher or
 * wider than the thickest of the die, as is in the die. The whole charge stands in the basin at +30°, under the lip. Chosen
 * by what is computed of them; ours, no source.
 */
const HINGE_TO_BEGIN = {
  ...HINGE_ARM,
  basinLength: mm(165),
  basinDepth: mm(120),
  basinWidth: mm(100),
  roofReach: mm(62),
  roofHeight: mm(75),
};

/** Gas is shut in under the step up to the boss, before the metal reaches the end: a second vent lets it out. */
function hingeToBegin(): Section {
  const section = hingeArm(HINGE_TO_BEGIN);
  const { basinLength, feederLength, armLength, cavityWidth } = HINGE_TO_BEGIN;
  const place = basinLength + feederLength + armLength + mm(5);
  return { ...section, vents: [{ place, area: cavityWidth * mm(0.3), blocked: 0 }, ...section.vents] };
}

const LEVER_TO_BEGIN = {
  ...TAPERED_LEVER,
  basinLength: mm(150),
  basinDepth: mm(110),
  basinWidth: mm(80),
  roofReach: mm(62),
  roofHeight: mm(62),
};

const WALL_TO_BEGIN = { ...THIN_WALL, basinDepth: mm(90), roofReach: mm(60), roofHeight: mm(28) };

export const STARTING_SHAPES: readonly StartingShape[] = [
  {
    name: 'flush basin',
    meaning: 'one floor from the back wall to the die end, roof reaching back over the basin',
    make: () => flushBasin(FIRST_SIZE),
    isBadExample: false,
  },
  {
    name: 'hinge arm',
    meaning: 'feeder end, tapering arm and boss, two cavities',
    make: hingeToBegin,
    isBadExample: false,
  },
  {
    name: 'tapered lever',
    meaning: 'a die that narrows evenly from its mouth to its end, in height and in width',
    make: () => taperedLever(LEVER_TO_BEGIN),
    isBadExample: false,
  },
  {
    name: 'thin wall',
    meaning: 'a wide 5 mm wall behind a short gate',
    make: () => thinWall(WALL_TO_BEGIN),
    isBadExample: false,
  },
  {
    name: 'bad example: pit behind a sill',
    meaning:
      'a sunk basin that metal has to climb out of; without a roof it keeps no feeder, and at a low start it holds less than the die takes',
    make: () => pitBehindSill(),
    isBadExample: true,
  },
];
