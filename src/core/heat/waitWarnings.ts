import type { Issue } from '$src/core/issue';
import { toMillimetres } from '$src/core/units';
import { landingSpeed, type Wait } from './waitInBasin';

/** Where the pool stands; elevations in one frame [m]. */
export interface PoolStand {
  /** Surface of the pool in the basin when the tilt begins. */
  readonly level: number;
  /** Lower edge of the skim bar, and the lip the metal goes over; null when there is none. */
  readonly skimBar: number | null;
  readonly lip: number | null;
  /** Thickness of the dross that floats [m]. */
  readonly dross: number;
}

/** What is wrong with the wait, as warnings: the pour can still be computed. Paths are fields of the wait. */
export function waitWarnings(wait: Wait, stand: PoolStand, criticalSpeed: number): Issue[] {
  return [
    ...hardLanding(wait, criticalSpeed),
    ...earlyTilt(wait),
    ...underSkimBar(stand),
    ...drossAtLip(stand),
  ];
}

function hardLanding(wait: Wait, criticalSpeed: number): Issue[] {
  const speed = landingSpeed(wait.dropHeight);
  if (speed <= criticalSpeed) return [];
  return [
    {
      path: 'dropHeight',
      message: `Metal lands in the basin at ${speed.toFixed(2)} m/s, over its critical ${criticalSpeed.toFixed(2)} m/s: film is folded in before the tilt begins.`,
      remedy: 'Ladle with the lip at the metal, or down a sloping wall.',
    },
  ];
}

function earlyTilt(wait: Wait): Issue[] {
  if (wait.tiltStart === null || wait.tiltStart >= wait.ladleTime) return [];
  return [
    {
      path: 'tiltStart',
      message: `The tilt begins ${(wait.ladleTime - wait.tiltStart).toFixed(1)} s before ladling ends.`,
      remedy: 'Begin the tilt when the ladle is away and the surface has been skimmed.',
    },
  ];
}

function underSkimBar({ level, skimBar }: PoolStand): Issue[] {
  if (skimBar === null || level >= skimBar) return [];
  return [
    {
      path: 'skimBar',
      message: `The metal stands ${toMillimetres(skimBar - level).toFixed(0)} mm below the skim bar, which then holds no dross back.`,
      remedy: 'Put in more metal, or set the bar lower.',
    },
  ];
}

/** Dross floats up to `level`; with a bar that dips in it stays behind. */
function drossAtLip({ level, skimBar, lip, dross }: PoolStand): Issue[] {
  const heldBack = skimBar !== null && level - dross >= skimBar;
  if (lip === null || heldBack || level < lip || level - dross > lip) return [];
  return [
    {
      path: 'dross',
      message: 'The dross that floats on the metal reaches the lip and goes into the die.',
      remedy: 'Skim before the tilt, put in more metal, or dip a skim bar into it.',
    },
  ];
}
