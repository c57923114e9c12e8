import type { Cell, CellId, ChargeBy } from '$src/cells/kinds';
import { metalNamed } from '$src/core/metal/metals';
import { DEFAULT_COMPUTATION } from '$src/core/pour/plan';
import type { Point, Section } from '$src/core/section/section';
import { DEFAULT_LIMITS } from '$src/core/tilt/range';
import type { MachineLimits, Stage, Tilt } from '$src/core/tilt/tilt';
import { fromDegrees, fromMillimetres, fromSquareMillimetres } from '$src/core/units';

/** What the example books share: the invented shop of three, its hinge arm, its basins and its cautions. */

export const CASTING = 'Hinge arm for a greenhouse vent, A356';

export type CellOf<K extends Cell['kind']> = Extract<Cell, { kind: K }>;

const base = (id: CellId, name: string) => ({ id, name, folded: false });

export const note = (id: CellId, name: string, lines: readonly string[]): CellOf<'note'> => ({
  ...base(id, name),
  kind: 'note',
  text: lines.join('\n\n'),
});

export const sectionCell = (
  id: CellId,
  name: string,
  section: Section,
  drawnWith: CellId,
): CellOf<'section'> => ({
  ...base(id, name),
  kind: 'section',
  section,
  drawnWith,
});

export const metalCell = (): CellOf<'metal'> => ({
  ...base('a356', 'A356'),
  kind: 'metal',
  metal: metalNamed('A356')!,
});

export const tiltCell = (id: CellId, name: string, tilt: Tilt): CellOf<'tilt'> => ({
  ...base(id, name),
  kind: 'tilt',
  tilt,
});

export const chargeCell = (
  id: CellId,
  name: string,
  section: CellId,
  tilt: CellId,
  charge: ChargeBy,
): CellOf<'charge'> => ({
  ...base(id, name),
  kind: 'charge',
  section,
  metal: 'a356',
  tilt,
  charge,
});

export const pourCell = (
  id: CellId,
  name: string,
  takes: { readonly section: CellId; readonly charge: CellId; readonly tilt: CellId },
): CellOf<'pour'> => ({
  ...base(id, name),
  kind: 'pour',
  metal: 'a356',
  ...takes,
  computation: DEFAULT_COMPUTATION,
});

export const compareCell = (
  id: CellId,
  name: string,
  pours: readonly CellId[],
  stepBy: CellOf<'compare'>['stepBy'],
): CellOf<'compare'> => ({ ...base(id, name), kind: 'compare', pours, stepBy });

export const cardCell = (id: CellId, name: string, pour: CellId): CellOf<'shop card'> => ({
  ...base(id, name),
  kind: 'shop card',
  pour,
  date: '',
  remark: '',
});

export const studyCell = (
  id: CellId,
  name: string,
  pour: CellId,
  study: CellOf<'study'>['study'],
): CellOf<'study'> => ({ ...base(id, name), kind: 'study', pour, study });

const point = (x: number, y: number): Point => ({ x: fromMillimetres(x), y: fromMillimetres(y) });

/** Roof of the arm from the mouth on [mm]: a root that flares towards the feeder, then a long taper to the boss. */
const ARM_ROOF = [
  [0, 34],
  [25, 34],
  [55, 28],
  [200, 24],
] as const;
const ARM_LENGTH = 200;
/** Of the basins that are sized for the front alone: with the charge they hold at the brink their feeder is short. */
const NARROW_BASIN = { width: 80, rim: 85, feederHeight: 45 } as const;

/** Wide and high enough for a feeder that can feed the arm, with 1.2 kg. */
export const WIDE_BASIN = { width: 95, rim: 95, feederHeight: 55 } as const;
/** Flush, and as long as holds 1.2 kg just under the brink, 30° uphill. */
export const WIDE_FLUSH = { ...WIDE_BASIN, length: 148, pit: 0, open: 83 } as const;
/** [kg], of arm and feeder. */
export const FED = 1.2;

/** The stages that bring a front home quietly behind the wide basin [°, °/s]. */
export const SLOW_PAST_LEVEL = [
  [8, 12],
  [-2, 7],
  [-90, 20],
] as const;

/**
 * The hinge arm, always the same from the mouth on, behind a basin of one's choice [mm]: its length, how far its floor
 * lies under the die floor (0 is flush), and how much of it at the back is open above. The rest is roofed, higher than
 * the arm so that gas goes back over the metal, and holds the metal as feeder at the end. A vent of 20 mm² sits at the boss.
 */
export function armBehind(basin: {
  readonly length: number;
  readonly pit: number;
  readonly open: number;
  /** Width into the page, height of the rims, and of the roofed part. */
  readonly width?: number;
  readonly rim?: number;
  readonly feederHeight?: number;
}): Section {
  const { length, pit, open, width, rim, feederHeight } = { ...NARROW_BASIN, ...basin };
  const sill = pit > 0 ? [point(0, -pit), point(length, -pit)] : [point(0, 0)];
  const places = { root: length + 60, arm: length + 135, boss: length + ARM_LENGTH };
  return {
    floor: [...sill, ...(pit > 0 ? [point(length, 0)] : []), point(places.boss, 0)],
    roof: [
      point(0, rim),
      point(open, rim),
      point(open, feederHeight),
      point(length, feederHeight),
      ...ARM_ROOF.map(([x, y]) => point(length + x, y)),
    ],
    openings: [{ wall: 'roof', from: 0, to: 1 }],
    regions: [
      { name: 'basin and feeder', end: fromMillimetres(length), width: fromMillimetres(width) },
      { name: 'root', end: fromMillimetres(places.root), width: fromMillimetres(40) },
      { name: 'arm', end: fromMillimetres(places.arm), width: fromMillimetres(34) },
      { name: 'boss', end: fromMillimetres(places.boss), width: fromMillimetres(40) },
    ],
    mouth: fromMillimetres(length),
    cavities: 1,
    pivot: point(length, 0),
    vents: [{ place: fromMillimetres(places.boss - 5), area: fromSquareMillimetres(20), blocked: 0 }],
  };
}

const UPRIGHT = fromDegrees(-90);
const SMOOTHING = 0.3;

/** The machine of the shop; a book whose text or map needs a quicker one says so in its source. */
const machineThat = (limits: Partial<MachineLimits>): MachineLimits => ({ ...DEFAULT_LIMITS, ...limits });

/** Steady tilt to −90° [°, °/s]. */
export const steady = (start: number, rate: number, limits: Partial<MachineLimits> = {}): Tilt => ({
  kind: 'steady',
  start: fromDegrees(start),
  end: UPRIGHT,
  rate: fromDegrees(rate),
  smoothing: SMOOTHING,
  limits: machineThat(limits),
});

/** Staged tilt: inclination and rate of each stage [°, °/s]. */
export const staged = (
  start: number,
  stages: readonly (readonly [to: number, rate: number])[],
  limits: Partial<MachineLimits> = {},
): Tilt => ({
  kind: 'staged',
  start: fromDegrees(start),
  stages: stages.map(([to, rate]): Stage => ({ to: fromDegrees(to), rate: fromDegrees(rate) })),
  smoothing: SMOOTHING,
  limits: machineThat(limits),
});

/** Said in a book whose narrow basin is a short feeder besides. */
export const FEEDER_SHORT =
  'One thing this book leaves aside: **the feeder is short.** Where the arm fills, too little metal is left over the mouth to feed it, and the verdict says so. What a basin must hold for that, and the same arm poured sound, is in *Level start against uphill start*.';

export const cautions = (id: CellId): CellOf<'note'> =>
  note(id, 'Before anyone pours', [
    'These figures **compare** pours. They are not a promise: a flat section knows no jets, no rivulets and no side walls, and nothing here has been matched with castings of yours.',
    'Molten metal explodes on damp. Ladle, die, basin, coat and tools must be dry and preheated, the floor dry and clear, everyone in the clothing the work calls for, and nobody under or in front of the swing.',
    'A machine that turns several hundred kilograms crushes. Lock it before reaching in. Begin every trial with a dry run and then a slow, supervised pour; never open a die early because a program said so.',
    'Local codes, the makers of the machine and the metal, and a competent, licensed person decide what is done in your shop, not this page.',
  ]);
