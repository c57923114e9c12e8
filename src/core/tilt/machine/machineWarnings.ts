import { toBar, toDegrees, toLitres, toMillimetres } from '$src/core/units';
import { makeDamper } from './damper';
import { reachAt } from './linkage';
import type { Release } from './machineMotion';
import type { Turned } from './turned';
import type { WayBack } from './wayBack';

export type WarningKind =
  | 'will not start'
  | 'hangs'
  | 'runs away'
  | 'cavitates'
  | 'reservoir too small'
  | 'pressure too high'
  | 'strikes the stop'
  | 'cylinder out of stroke'
  | 'does not come back'
  | 'pressure too high on the way back';

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
export const machineWarnings = (release: Release, turned: Turned, quickest: number): MachineWarning[] => [
  ...startWarnings(turned),
  ...paceWarnings(turned, quickest),
  ...oilWarnings(release, turned),
  ...stopWarnings(turned),
  ...strokeWarnings(release),
];

/** What goes wrong when the body is lifted back. */
export function wayBackWarnings({ machine }: Release, back: WayBack): MachineWarning[] {
  const warnings: MachineWarning[] = [];
  if (back.time === null) {
    warnings.push({
      kind: 'does not come back',
      message: `Lifted back with ${show(back.torque)} N·m it is not at the start within a minute; its weights and bearing alone take ${show(back.needed)} N·m.`,
      remedy: machine.oneWayReturn
        ? 'Lift harder, or add weight on the basin side.'
        : 'Lift harder, open the valve, or let the damper go back freely.',
    });
  }
  if (back.highestPressure > machine.highestPressure) {
    warnings.push({
      kind: 'pressure too high on the way back',
      message: `Lifted back with ${show(back.torque)} N·m the damper reaches ${show(toBar(back.highestPressure))} bar; it is made for ${show(toBar(machine.highestPressure))} bar.`,
      remedy: 'Lift more gently, or let the damper go back freely.',
    });
  }
  return warnings;
}

function startWarnings(turned: Turned): MachineWarning[] {
  const { driving, drivingNow, held, struckAt, reached, duration, loaded } = turned;
  const withMetal = loaded ? ' with the metal in it' : '';
  if (driving <= held) {
    return [
      {
        kind: 'will not start',
        message: `The weights turn it with ${show(driving)} N·m at the start${withMetal}; the bearing holds ${show(held)} N·m.`,
        remedy: 'Put more weight on the die side, or start lower. Do not push a loaded die by hand.',
      },
    ];
  }
  if (struckAt !== null) return [];
  return [
    {
      kind: 'hangs',
      message: `It comes no further than ${degrees(reached)} in ${show(duration)} s${withMetal}.`,
      remedy:
        drivingNow <= held
          ? 'Valve and oil change nothing there: put more weight on the die side, towards the roof.'
          : 'Open the valve, or warm the oil; more weight on the die side helps too.',
    },
  ];
}

function paceWarnings({ fastest }: Turned, quickest: number): MachineWarning[] {
  const warnings: MachineWarning[] = [];
  if (fastest > quickest) {
    warnings.push({
      kind: 'runs away',
      message: `It reaches ${degrees(fastest)} a second; the machine's quickest is ${degrees(quickest)} a second.`,
      remedy: 'Close the valve, or take weight off.',
    });
  }
  return warnings;
}

function stopWarnings({ struckAt }: Turned): MachineWarning[] {
  const warnings: MachineWarning[] = [];
  if (struckAt !== null && struckAt > GENTLE_STOP) {
    warnings.push({
      kind: 'strikes the stop',
      message: `It meets the stop at ${degrees(struckAt)} a second.`,
      remedy: 'Let the cushion hold more, or over a longer stretch.',
    });
  }
  return warnings;
}

function oilWarnings({ machine, start, end }: Release, turned: Turned): MachineWarning[] {
  const warnings: MachineWarning[] = [];
  if (turned.deepestSuction > DEEPEST_SUCTION) {
    warnings.push({
      kind: 'cavitates',
      message: `The pulled side is sucked ${show(toBar(turned.deepestSuction))} bar below the reservoir: it draws air or vapour, and then holds nothing.`,
      remedy: 'Use a wider, shorter line to the reservoir, or thinner oil that its maker approves.',
    });
  }
  if (turned.highestPressure > machine.highestPressure) {
    warnings.push({
      kind: 'pressure too high',
      message: `The pressure reaches ${show(toBar(turned.highestPressure))} bar; the damper is made for ${show(toBar(machine.highestPressure))} bar.`,
      // A damper that holds the weights back carries their torque whatever its valve lets through.
      remedy:
        'Take weight off, or use a wider bore or a longer arm; opening the valve only makes it quicker.',
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

const show = (value: number): string => `${Number(value.toPrecision(3))}`.replace('-', '−');
const degrees = (radians: number): string => `${show(toDegrees(radians))}°`;
