import { toBar, toDegrees, toLitres, toMillimetres } from '$src/core/units';
import { frictionLimit, type MetalLoad, makeBody, NO_METAL, weightTorques } from './body';
import { makeDamper } from './damper';
import { reachAt } from './linkage';
import type { MachineRun, Release } from './machineMotion';

export type WarningKind =
  | 'will not start'
  | 'hangs'
  | 'runs away'
  | 'cavitates'
  | 'reservoir too small'
  | 'pressure too high'
  | 'strikes the stop'
  | 'cylinder out of stroke';

/** Something the machine would do that it must not; words for people. */
export interface MachineWarning {
  readonly kind: WarningKind;
  readonly message: string;
  readonly remedy: string;
}

/** Atmosphere: suction cannot be deeper [Pa]. Air comes out of oil earlier; three quarters are taken (common practice, no source). */
const DEEPEST_SUCTION = 0.75 * 101_325;
/** Meeting the stop quicker than this jars the casting (common practice, no source) [rad/s]. */
const GENTLE_STOP = 0.1;

/** @param quickest the quickest rate the machine may have [rad/s] */
export function machineWarnings(
  release: Release,
  run: MachineRun,
  quickest: number,
  metalAtStart: MetalLoad = NO_METAL,
): MachineWarning[] {
  return [
    ...startWarnings(release, run, metalAtStart),
    ...paceWarnings(run, quickest),
    ...oilWarnings(release, run),
    ...strokeWarnings(release),
  ];
}

function startWarnings(release: Release, run: MachineRun, metal: MetalLoad): MachineWarning[] {
  const body = makeBody(release.machine, release.end);
  const { gravity, metal: byMetal } = weightTorques(body, release.start, metal);
  const driving = -(gravity + byMetal);
  if (driving <= frictionLimit(body, metal)) {
    return [
      {
        kind: 'will not start',
        message: `The weights turn it with ${show(driving)} N·m at the start; the bearing holds ${show(frictionLimit(body, metal))} N·m.`,
        remedy: 'It needs a push, more weight on the die side, or a lower start.',
      },
    ];
  }
  if (run.reachedStop) return [];
  const reached = run.trace.inclination.at(-1)!;
  return [
    {
      kind: 'hangs',
      message: `It comes no further than ${degrees(reached)} in ${show(run.motion.duration)} s.`,
      remedy: 'Open the valve, add weight, or warm the oil.',
    },
  ];
}

function paceWarnings(run: MachineRun, quickest: number): MachineWarning[] {
  const fastest = greatest(run.trace.rate.map(Math.abs));
  const warnings: MachineWarning[] = [];
  if (fastest > quickest) {
    warnings.push({
      kind: 'runs away',
      message: `It reaches ${degrees(fastest)} a second; the machine's quickest is ${degrees(quickest)} a second.`,
      remedy: 'Close the valve, or take weight off.',
    });
  }
  if (run.struckAt !== null && run.struckAt > GENTLE_STOP) {
    warnings.push({
      kind: 'strikes the stop',
      message: `It meets the stop at ${degrees(run.struckAt)} a second.`,
      remedy: 'Let the cushion hold more, or over a longer stretch.',
    });
  }
  return warnings;
}

function oilWarnings({ machine, start, end }: Release, run: MachineRun): MachineWarning[] {
  const warnings: MachineWarning[] = [];
  const suction = greatest(run.trace.suction);
  if (suction > DEEPEST_SUCTION) {
    warnings.push({
      kind: 'cavitates',
      message: `The pulled side is sucked ${show(toBar(suction))} bar below the reservoir: it draws air or vapour, and then holds nothing.`,
      remedy: 'Use a wider, shorter line to the reservoir, or thinner oil that its maker approves.',
    });
  }
  const highest = greatest(run.trace.pressure);
  if (highest > machine.highestPressure) {
    warnings.push({
      kind: 'pressure too high',
      message: `The pressure reaches ${show(toBar(highest))} bar; the damper is made for ${show(toBar(machine.highestPressure))} bar.`,
      remedy: 'Open the valve, use a wider bore or a longer arm.',
    });
  }
  const { rodArea } = makeDamper(machine);
  const [shortest, longest] = strokeOf({ machine, start, end });
  const rodVolume = rodArea * (longest - shortest);
  if (rodVolume > machine.reservoir) {
    warnings.push({
      kind: 'reservoir too small',
      message: `The rod makes ${show(toLitres(rodVolume))} l of room; the reservoir has ${show(toLitres(machine.reservoir))} l.`,
      remedy: 'Use a larger reservoir.',
    });
  }
  return warnings;
}

function strokeWarnings(release: Release): MachineWarning[] {
  const { shortest, longest } = release.machine.cylinder;
  const [least, most] = strokeOf(release);
  if (least >= shortest && most <= longest) return [];
  return [
    {
      kind: 'cylinder out of stroke',
      message: `The cylinder would have to be ${show(toMillimetres(least))} to ${show(toMillimetres(most))} mm long; it can be ${show(toMillimetres(shortest))} to ${show(toMillimetres(longest))} mm.`,
      remedy: 'Move an eye, or take another cylinder.',
    },
  ];
}

const LOOKS = 100;

/** Shortest and longest reach over the tilt [m]. */
export function strokeOf({ machine, start, end }: Release): [number, number] {
  const lengths = Array.from(
    { length: LOOKS + 1 },
    (_, i) => reachAt(machine.cylinder, start + ((end - start) * i) / LOOKS).length,
  );
  return [Math.min(...lengths), Math.max(...lengths)];
}

const greatest = (values: Float64Array): number => values.reduce((a, b) => Math.max(a, b), 0);
const show = (value: number): string => `${Number(value.toPrecision(3))}`.replace('-', '−');
const degrees = (radians: number): string => `${show(toDegrees(radians))}°`;
