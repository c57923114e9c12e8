import type { Flow } from '$src/core/flow/flow';
import type { Forces } from '$src/core/flow/forces';
import type { Heat } from '$src/core/heat/heat';
import type { Mesh } from '$src/core/mesh/mesh';
import type { LiveMotion } from '$src/core/tilt/machine/liveMotion';
import type { Motion } from '$src/core/tilt/tilt';
import type { Sample } from '$src/core/watch/sample';
import type { PourPlan } from './plan';
import type { Recorder } from './recorder';
import type { Watchers } from './watchers';

/** All of one run: state, clock and those who watch. */
export interface Run {
  readonly plan: PourPlan;
  /** The mesh in use, and the same upside down for inclinations past −90°. */
  mesh: Mesh;
  readonly meshTurned: Mesh;
  readonly flow: Flow;
  readonly forces: Forces;
  readonly motion: Motion;
  /** A machine turns under its metal and is then the motion too; null when the tilt is given in time. */
  readonly body: LiveMotion | null;
  /** Heat of the metal; null = not computed. */
  readonly heat: Heat | null;
  readonly watchers: Watchers;
  readonly recorder: Recorder;
  /** Time from one look to the next [s]. */
  readonly lookEvery: number;
  /** How many times shorter than needed each step is: 1, but where a check asks what the step does. */
  readonly finer: number;
  readonly sample: Sample & {
    time: number;
    elapsed: number;
    inclination: number;
    front: number;
    frontAlongAxis: number;
  };
  readonly largestCell: number;
  readonly volumeAtStart: number;
  time: number;
  quietFor: number;
  spilledBefore: number;
  drift: number;
  greatestSpeed: number;
  /** Greatest speed at the last look [m/s]. */
  speedNow: number;
}
