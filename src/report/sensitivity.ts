import { type PourPlan, PREVIEW_MESH_CELLS } from '$src/core/pour/plan';
import { fromDegrees, METRIC, type PageUnits } from '$src/core/units';
import { inUnits } from './inUnits';
import { otherSurface } from './otherSurface';
import { type PlanAt, planAt } from './study/planAt';
import type { PointFigures } from './study/pointFigures';
import { shownDistance } from './study/quantities';
import { regionOf } from './study/region';
import { shortageOf } from './study/regionWords';
import { bandOf, measuredSpread } from './study/repeatSpread';
import { settingNamed } from './study/settings';
import { fixed, MINUS, percentText } from './wording';

/** The pour with one input a little off: what it would be on another day, or if an assumed value were wrong. */
export interface Variation {
  readonly id: string;
  /** What is changed, and to or by what: "charge", "+5 %". */
  readonly name: string;
  readonly change: string;
  /** A value that is assumed and nobody sets. */
  readonly isAssumed?: boolean;
  readonly at: PlanAt;
}

/** Steps a careful shop keeps within; ours. */
const CHARGE = 0.05;
const RATE = 0.1;
const START = 2;
const VALVE = 0.1;
/** [K] */
const OIL = 10;
const METAL = 10;
const DIE = 25;
const COAT = 0.2;

/** The plan on the mesh that variations are run on. */
export const onPreviewMesh = (plan: PourPlan): PourPlan => ({
  ...plan,
  computation: { ...plan.computation, meshCells: Math.min(plan.computation.meshCells, PREVIEW_MESH_CELLS) },
});

/**
 * Whether the coarse mesh calls a pour otherwise that is sound on its own: what it then says of settings a little off
 * would start from a wrong answer.
 */
export function coarseContradicts(coarse: PointFigures, own: PointFigures): boolean {
  const [there, here] = [{ figures: coarse }, { figures: own }];
  return (
    regionOf(here) === 'sound' &&
    (regionOf(there) !== 'sound' || (shortageOf(there) === null) !== (shortageOf(here) === null))
  );
}

/**
 * The pour varied one input at a time, on its mesh: charge ±5 %, tilt rate ±10 % (all stages alike), start
 * angle ±2° (a measured tilt by two standard deviations of its repeats instead), valve opening ±10 % and oil ±10 K of a machine, contact angle 90° and 180°, and the metal's other surface, clean for oxidised. Where the pour has heat: metal ±10 K, die ±25 K, what the coat lets through ±20 %, and the solid share at which a front stops, 20 and 35 %. An input this pour does
 * not have is left out; what machine or section cannot do is refused with its reason.
 */
export function variationsOf(base: PourPlan, units: PageUnits = METRIC): Variation[] {
  const byKelvins = (setting: string, name: string, kelvins: number): Variation[] =>
    bothWays(
      base,
      setting,
      name,
      shownDistance(kelvins, 'temperature', units),
      (now, sign) => now + sign * kelvins,
    );
  return [
    ...byShare(base, 'charge.mass', 'charge', CHARGE),
    ...(asMeasured(base, 'tilt.rate', 'tilt rate') ?? byShare(base, 'tilt.rate', 'tilt rate', RATE)),
    ...(asMeasured(base, 'tilt.start', 'start angle') ??
      bothWays(
        base,
        'tilt.start',
        'start angle',
        `${START}°`,
        (now, sign) => now + sign * fromDegrees(START),
      )),
    ...byShare(base, 'tilt.valve', 'valve opening', VALVE),
    ...byKelvins('tilt.oil', 'oil temperature', OIL),
    ...byKelvins('heat.metal', 'metal temperature', METAL),
    ...byKelvins('heat.die', 'die temperature', DIE),
    ...byShare(base, 'heat.transfer', 'heat through the coat', COAT),
    ...stoppingAt(base),
    ...[90, 180].map((degrees) => touching(base, degrees)),
    surfaceOf(base, units),
  ];
}

type Change = (now: number, sign: 1 | -1) => number;

function bothWays(base: PourPlan, setting: string, name: string, by: string, change: Change): Variation[] {
  const now = settingNamed(base, setting)?.read(base) ?? null;
  if (now === null) return [];
  return ([-1, 1] as const).map((sign) => ({
    id: `${setting}${sign}`,
    name,
    change: `${sign < 0 ? MINUS : '+'}${by}`,
    at: planAt(base, { [setting]: change(now, sign) }),
  }));
}

const byShare = (base: PourPlan, setting: string, name: string, share: number): Variation[] =>
  bothWays(base, setting, name, `${fixed(share * 100, 0)} %`, (now, sign) => now * (1 + sign * share));

/** By what repeats were measured to stray, in place of our step; null when they were not measured. */
function asMeasured(base: PourPlan, setting: string, name: string): Variation[] | null {
  const spread = measuredSpread(base, setting);
  const quantity = settingNamed(base, setting)?.quantity;
  if (spread === null || !quantity) return null;
  const by = `${shownDistance(spread, quantity)}, as ${bandOf(base)!.count} repeats strayed`;
  return bothWays(base, setting, name, by, (now, sign) => now + sign * spread);
}

/** Solid share at which fronts of alloys with a long freezing range are said to stop (from memory, as in `frontHold`). */
const STOPPING = [0.2, 0.35] as const;

/**
 * Where a front stops is assumed of every metal: at both ends of what is said of long-range alloys. One that is taken to run
 * longer may stop as early as they do, where its crystals grow through the depth.
 */
function stoppingAt(base: PourPlan): Variation[] {
  const { heat } = base;
  if (!heat) return [];
  const { coherency } = heat.freezing;
  const ends = coherency > STOPPING[1] ? [STOPPING[1]] : STOPPING.filter((share) => share !== coherency);
  return ends.map((share) => ({
    id: `stops${share}`,
    name: 'a front stops',
    change: `${percentText(share)} solid`,
    isAssumed: true,
    at: { plan: { ...base, heat: { ...heat, freezing: { ...heat.freezing, coherency: share } } } },
  }));
}

const touching = (base: PourPlan, degrees: number): Variation => ({
  id: `contact${degrees}`,
  name: 'contact angle',
  change: `${degrees}°`,
  isAssumed: true,
  at: planAt(base, { 'metal.contactAngle': fromDegrees(degrees) }),
});

function surfaceOf(base: PourPlan, units: PageUnits): Variation {
  const { name, liquid } = otherSurface(base.liquid);
  const change = inUnits(`${name}, ${fixed(liquid.surfaceTension, 2)} N/m`, units);
  return {
    id: 'surface',
    name: 'surface tension',
    change,
    isAssumed: true,
    at: { plan: { ...base, liquid } },
  };
}
