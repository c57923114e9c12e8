import type { Conditions } from '$src/core/flow/conditions';
import type { HeatPlan } from '$src/core/heat/heatPlan';
import type { Liquid } from '$src/core/metal/liquid';
import type { Section } from '$src/core/section/section';
import type { Tilt } from '$src/core/tilt/tilt';

export type { Liquid };

/** Settings of the computation, not of the pour. */
export interface Computation {
  /** Mesh cells along the section, 20 to 2000. */
  readonly meshCells: number;
  /** Whether a front has to overcome the capillary stand. */
  readonly capillaryGate: boolean;
  /** The computation gives up this long after the body has come to rest [s]. */
  readonly settlingTime: number;
  /** 'vents': gas leaves by the basin and by vents only, and a sealed pocket is pressed; 'free': it leaves anywhere. Absent = 'vents'. */
  readonly gas?: 'vents' | 'free';
  /** Ends and friction; absent = closed die, metal. */
  readonly conditions?: Conditions;
  /**
   * The run ends as soon as nothing is left to decide, and does not wait for the body to come to rest: the cavity is
   * full to its last place and its metal calm, or the front has stood stiff for a second.
   */
  readonly endsWhenDecided?: boolean;
}

/** Everything that decides a run. Plain data: it is hashed, sent to workers and kept with the record. */
export interface PourPlan {
  readonly section: Section;
  readonly liquid: Liquid;
  /** Volume of metal [m³], all cavities and the basin together. */
  readonly volume: number;
  readonly tilt: Tilt;
  readonly computation: Computation;
  /** Heat of the metal; absent or null = not computed. */
  readonly heat?: HeatPlan | null;
}

export const DEFAULT_COMPUTATION: Computation = { meshCells: 400, capillaryGate: true, settlingTime: 4 };
/** Coarse run shown first while a full one is on its way. */
export const PREVIEW_MESH_CELLS = 100;
/** Mesh of the sketch drawn while something is dragged: its front-speed curve has to keep up with the hand. */
export const SKETCH_MESH_CELLS = 50;
