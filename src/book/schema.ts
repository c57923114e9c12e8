import * as v from 'valibot';
import type { Book } from '$src/cells/kinds';
import { castingsFields } from './castingsSchema';
import { guessFields } from './guessSchema';
import { machineSchema } from './machineSchema';
import { underlaySchema } from './underlaySchema';

/** Shapes and sizes of a book, nothing of what its numbers mean: a wrong outline opens and is shown as wrong. */

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));
const number = v.pipe(v.number(), v.finite());
const listOf = <S extends v.GenericSchema>(item: S, most: number) => v.pipe(v.array(item), v.maxLength(most));

const LONGEST_NAME = 300;
const LONGEST_NOTE = 100_000;
const MOST_POINTS = 500;
const MOST_PARTS = 100;
/** More cells than a page can show; a book of this size is not a book. */
const MOST_CELLS = 500;

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_NAME));
const reference = v.nullable(id);

const point = v.strictObject({ x: number, y: number });

const opening = v.variant('wall', [
  v.strictObject({ wall: v.literal('roof'), from: number, to: number }),
  v.strictObject({ wall: v.literal('back wall') }),
]);

const section = v.strictObject({
  floor: listOf(point, MOST_POINTS),
  roof: listOf(point, MOST_POINTS),
  openings: listOf(opening, MOST_PARTS),
  regions: listOf(
    v.strictObject({
      name: text(LONGEST_NAME),
      end: number,
      width: number,
      widthAtEnd: v.exactOptional(number),
      transfer: v.exactOptional(number),
      dieTemperature: v.exactOptional(number),
    }),
    MOST_PARTS,
  ),
  mouth: number,
  cavities: number,
  pivot: point,
  vents: listOf(v.strictObject({ place: number, area: number, blocked: number }), MOST_PARTS),
});

const whence = {
  source: text(LONGEST_NOTE),
  confidence: v.picklist(['high', 'medium', 'low', 'assumed', 'yours']),
};
const sourced = v.strictObject({ value: number, ...whence });

const sourcedRange = v.strictObject({ low: number, high: number, ...whence });
const own = v.exactOptional(sourced);

/** What the user typed of freezing and heat; all of it may be absent. */
const thermal = v.strictObject({
  liquidus: own,
  solidus: own,
  latentHeat: own,
  liquidHeat: own,
  solidHeat: own,
  solidDensity: own,
  solidConductivity: own,
  coherency: own,
  freezingShrinkage: own,
  contraction: own,
  emissivity: own,
  pouringRange: v.exactOptional(sourcedRange),
  dieRange: v.exactOptional(sourcedRange),
});

const metal = v.strictObject({
  base: text(LONGEST_NAME),
  name: text(LONGEST_NAME),
  density: sourced,
  viscosity: sourced,
  surfaceTension: sourced,
  contactAngle: sourced,
  pouringTemperature: sourced,
  criticalSpeedOverride: v.nullable(number),
  thermal: v.exactOptional(thermal),
});

const charge = v.variant('by', [
  v.strictObject({ by: v.literal('mass'), mass: number }),
  v.strictObject({ by: v.literal('fill level'), fromLip: number }),
  v.strictObject({ by: v.literal('head'), head: number }),
]);

const ladling = v.strictObject({
  dropHeight: number,
  ladleTime: number,
  skimTime: number,
  settleTime: number,
  tiltStart: v.nullable(number),
  skullShare: number,
  drossShare: number,
  measuredTemperature: v.nullable(number),
  skimBar: v.nullable(number),
  dross: number,
});

const dieCycle = v.strictObject({
  cycleTime: number,
  dieMass: number,
  outside: number,
  transfer: number,
  shopTemperature: number,
  ejectionTemperature: number,
});

const ratedStage = v.strictObject({ to: number, rate: number });
const timedStage = v.strictObject({ to: number, time: number });
/** By the field it has rather than as a union, so that a refusal names the field that is wrong. */
export const stage = v.lazy((input) => (isObject(input) && 'time' in input ? timedStage : ratedStage));
/** Both forms of a stage, for whom a choice by field is of no use. */
export const stageForms = [ratedStage, timedStage];

const tiltBase = {
  start: number,
  limits: v.strictObject({ highestStart: number, lowestEnd: number, slowest: number, quickest: number }),
};
const programmedBase = { ...tiltBase, smoothing: number };
const knots = listOf(v.strictObject({ time: number, inclination: number }), MOST_POINTS);
const tilt = v.variant('kind', [
  v.strictObject({ kind: v.literal('steady'), ...programmedBase, end: number, rate: number }),
  v.strictObject({ kind: v.literal('staged'), ...programmedBase, stages: listOf(stage, MOST_PARTS) }),
  v.strictObject({ kind: v.literal('machine'), ...tiltBase, end: number, machine: machineSchema }),
  v.strictObject({
    kind: v.literal('front-led'),
    ...tiltBase,
    end: number,
    share: number,
    homeWithin: v.nullable(number),
  }),
  v.strictObject({ kind: v.literal('drawn'), ...tiltBase, knots, origin: text(LONGEST_NOTE) }),
  v.strictObject({
    kind: v.literal('measured'),
    ...tiltBase,
    knots,
    origin: text(LONGEST_NOTE),
    readings: v.exactOptional(
      v.strictObject({ smoothedOver: number, scatter: number, before: number, after: number }),
    ),
    band: v.exactOptional(v.strictObject({ count: number, start: number, time: number, rate: number })),
  }),
]);

const computation = v.strictObject({ meshCells: number, capillaryGate: v.boolean(), settlingTime: number });

const base = { id, name: text(LONGEST_NAME), folded: v.boolean(), locked: v.exactOptional(v.boolean()) };
const stepBy = v.picklist(['time', 'inclination', 'filled share']);

const study = v.strictObject({
  axes: listOf(v.strictObject({ setting: text(LONGEST_NAME), from: number, to: number, points: number }), 2),
  figure: v.picklist([
    'peakFrontSpeed',
    'firstFlow',
    'fillTime',
    'arrivalTime',
    'finalShare',
    'shareAboveCritical',
    'skinFolded',
  ]),
  meshCells: number,
  repeatability: listOf(number, 2),
});

const cell = v.variant('kind', [
  v.strictObject({ kind: v.literal('note'), ...base, text: text(LONGEST_NOTE), after: v.exactOptional(id) }),
  v.strictObject({
    kind: v.literal('section'),
    ...base,
    section,
    drawnWith: reference,
    underlay: v.exactOptional(underlaySchema),
  }),
  v.strictObject({ kind: v.literal('metal'), ...base, metal }),
  v.strictObject({
    kind: v.literal('charge'),
    ...base,
    section: reference,
    metal: reference,
    tilt: reference,
    charge,
    ladling: v.exactOptional(ladling),
  }),
  v.strictObject({ kind: v.literal('tilt'), ...base, tilt }),
  v.strictObject({
    kind: v.literal('pour'),
    ...base,
    section: reference,
    metal: reference,
    charge: reference,
    tilt: reference,
    computation,
    provenDwell: v.exactOptional(number),
    dieCycle: v.exactOptional(dieCycle),
  }),
  v.strictObject({ kind: v.literal('compare'), ...base, pours: listOf(id, MOST_CELLS), stepBy }),
  v.strictObject({ kind: v.literal('study'), ...base, pour: reference, study }),
  v.strictObject({
    kind: v.literal('shop card'),
    ...base,
    pour: reference,
    date: text(LONGEST_NAME),
    remark: text(LONGEST_NOTE),
  }),
  v.strictObject({ kind: v.literal('castings'), ...base, ...castingsFields }),
  v.strictObject({ kind: v.literal('guess'), ...base, ...guessFields }),
]);

const units = v.strictObject({
  length: v.picklist(['mm', 'in']),
  mass: v.picklist(['kg', 'lb']),
  temperature: v.picklist(['degC', 'degF']),
});

export const bookSchema: v.GenericSchema<unknown, Book> = v.strictObject({
  title: text(LONGEST_NAME),
  casting: text(LONGEST_NAME),
  units: v.exactOptional(units),
  cells: listOf(cell, MOST_CELLS),
});

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
