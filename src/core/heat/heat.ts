import type { Flow } from '$src/core/flow/flow';
import type { Mesh } from '$src/core/mesh/mesh';
import { mirrorMesh } from '$src/core/mesh/mirror';
import { type Walls, wallsOf, wholeContact } from './contactArea';
import { enthalpyOf } from './enthalpy';
import type { Freezing } from './freezing';
import type { HeatPlan } from './heatPlan';

/**
 * The heat of the metal and of the die's surface, and the scratch of a step, all allocated once. Cell arrays have
 * `cells` entries.
 */
export interface Heat {
  readonly freezing: Freezing;
  readonly walls: Walls;
  /** The same walls with the mesh seen upside down, as the flow sees it past −90°. */
  readonly wallsTurned: Walls;
  /** Heat content by mass [J/kg], counted from the solid at its solidus; 0 in dry cells. Energy of a cell = density × volume × this. */
  readonly enthalpy: Float64Array;
  /** [K]; NaN in dry cells. */
  readonly temperature: Float64Array;
  /** Solid fraction, 0 to 1; NaN in dry cells. */
  readonly solid: Float64Array;
  /** Surface of the die at the cell [K], and the heat it takes up a kelvin [J/K] (Infinity = it keeps its temperature). */
  readonly dieTemperature: Float64Array;
  readonly dieHeat: Float64Array;
  readonly dieWarms: boolean;
  /** Region of the section that each cell belongs to. */
  readonly region: Uint16Array;
  readonly transfer: Float64Array;
  /** Transfer after so many seconds of contact; Infinity = never. */
  readonly laterTransfer: Float64Array;
  readonly laterAfter: Float64Array;
  /** When metal first came and when the cell was first full [s]; NaN until then. Metal ladled in came at 0. */
  readonly firstContact: Float64Array;
  readonly fullTime: Float64Array;
  /** Volumes before the step [m³]. */
  readonly volumeBefore: Float64Array;
  /** Scratch: volumes on their way, implicit shares and the rows of the transport solve. */
  readonly moving: Float64Array;
  readonly implicit: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly diagonal: Float64Array;
  readonly right: Float64Array;
  /** Heat given to the die so far by region [J]. */
  readonly lostByRegion: Float64Array;
  /** Heat given to the die, carried off by spilled metal and brought in at an open end so far [J]. */
  lost: number;
  spilled: number;
  brought: number;
  /** Heat content of metal that enters at an open end [J/kg]; a die has none. */
  entering: number;
  /** Whether any of the metal was part solid when heat was last lost. */
  hasSolid: boolean;
  /** Time carried since heat was last lost [s]. */
  owed: number;
}

/** Depth that counts as contact [m]: the depth at which a front is read; thinner is film. */
export const CONTACT_DEPTH = 1e-3;
/** A cell this full is full (share of its volume). */
export const FULL = 0.995;

/**
 * Heat of metal that stands still in the mesh at the start of the tilt, at one temperature.
 * @param regionEnds where each region of the section ends along the axis [m], in order
 * @param cavities equal cavities past the mouth
 * @throws RangeError when regions and heat do not match
 */
export function makeHeat(
  plan: HeatPlan,
  flow: Flow,
  mesh: Mesh,
  regionEnds: readonly number[],
  cavities: number,
): Heat {
  if (plan.regions.length !== regionEnds.length)
    throw new RangeError(`heat of regions: got ${plan.regions.length}, expected ${regionEnds.length}`);
  const cell = () => new Float64Array(mesh.cells);
  const region = regionsOf(mesh, regionEnds);
  const byRegion = (value: (k: number) => number) => Float64Array.from(region, value);
  const walls = wallsOf(mesh, cavities);
  const heat: Heat = {
    freezing: plan.freezing,
    walls,
    wallsTurned: wallsOf(mirrorMesh(mesh), cavities),
    enthalpy: cell(),
    temperature: cell().fill(Number.NaN),
    solid: cell().fill(Number.NaN),
    dieTemperature: byRegion((k) => plan.regions[k]!.dieTemperature),
    dieHeat: cell().map((_, i) =>
      plan.dieSurface === null ? Number.POSITIVE_INFINITY : plan.dieSurface * wholeContact(walls, mesh, i),
    ),
    dieWarms: plan.dieSurface !== null,
    region,
    transfer: byRegion((k) => plan.regions[k]!.transfer),
    laterTransfer: byRegion((k) => plan.regions[k]!.later?.transfer ?? plan.regions[k]!.transfer),
    laterAfter: byRegion((k) => plan.regions[k]!.later?.after ?? Number.POSITIVE_INFINITY),
    firstContact: cell().fill(Number.NaN),
    fullTime: cell().fill(Number.NaN),
    volumeBefore: flow.volume.slice(),
    moving: cell(),
    implicit: cell(),
    lower: cell(),
    upper: cell(),
    diagonal: cell(),
    right: cell(),
    lostByRegion: new Float64Array(regionEnds.length),
    lost: 0,
    spilled: 0,
    brought: 0,
    entering: enthalpyOf(plan.freezing, plan.startTemperature),
    owed: 0,
    hasSolid: false,
  };
  fillPools(heat, flow, mesh, plan.startTemperature);
  return heat;
}

function regionsOf(mesh: Mesh, regionEnds: readonly number[]): Uint16Array {
  const last = regionEnds.length - 1;
  return Uint16Array.from({ length: mesh.cells }, (_, i) => {
    const centre = (mesh.x[i]! + mesh.x[i + 1]!) / 2;
    const found = regionEnds.findIndex((end) => centre < end);
    return found < 0 ? last : found;
  });
}

function fillPools(heat: Heat, flow: Flow, mesh: Mesh, temperature: number): void {
  const enthalpy = enthalpyOf(heat.freezing, temperature);
  for (let i = 0; i < mesh.cells; i++) {
    if (flow.volume[i]! <= 0) continue;
    heat.enthalpy[i] = enthalpy;
    heat.temperature[i] = temperature;
    heat.solid[i] = 0;
    if (flow.depth[i]! >= CONTACT_DEPTH) heat.firstContact[i] = 0;
    if (flow.volume[i]! >= FULL * mesh.volume[i]!) heat.fullTime[i] = 0;
  }
}

/** Heat in the metal of the section now [J], counted from the solid at its solidus. */
export function heatInMetal(heat: Heat, flow: Flow): number {
  let sum = 0;
  for (let i = 0; i < heat.enthalpy.length; i++) sum += flow.volume[i]! * heat.enthalpy[i]!;
  return heat.freezing.density * sum;
}
