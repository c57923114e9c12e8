import type { MachineFall, PourRecord } from '$src/core/pour/record';
import { toBar, toDegrees } from '$src/core/units';
import { angleText, fixed, listText, secondsText } from './wording';

/** What a machine did wrong and what a name for it is; a jarred stop comes too late to make the tilt another one. */
const JARS = 'strikes the stop';

/** Whether the tilt that was computed is one this machine should not be asked for, or cannot turn as computed. */
export const isMachineWrong = ({ machine }: PourRecord): boolean =>
  (machine?.warnings ?? []).some(({ kind }) => kind !== JARS);

/** What the machine did wrong with the metal in it, as a reason; null when nothing. */
export function machineReason({ machine }: PourRecord): { name: string; line: string } | null {
  if (!machine || machine.warnings.length === 0) return null;
  const { warnings } = machine;
  return {
    name: `machine: ${listText(warnings.map(({ kind }) => kind))}`,
    line: warnings.map(({ message }) => message).join(' '),
  };
}

/** How it fell with its metal, in one sentence. */
export function machineSentence({
  struckAt,
  reached,
  duration,
  fastest,
  highestPressure,
}: MachineFall): string {
  const end =
    struckAt === null
      ? `came to ${angleText(reached)} in ${secondsText(duration)} and not to its stop`
      : `met its stop after ${secondsText(duration)}, at ${degreesPerSecond(struckAt)}`;
  return `Under its metal the machine ${end}; its quickest was ${degreesPerSecond(fastest)}, the damper's highest pressure ${fixed(toBar(highestPressure), 1)} bar.`;
}

const degreesPerSecond = (rate: number): string => `${fixed(toDegrees(rate), 1)} °/s`;

/** The fall as plain data for a JSON file; nothing when no machine turned the die. */
export function machineJson({ machine }: PourRecord) {
  if (!machine) return {};
  return {
    machine: {
      reached_stop: machine.struckAt !== null,
      reached_deg: toDegrees(machine.reached),
      tilt_time_s: machine.duration,
      quickest_rate_deg_per_s: toDegrees(machine.fastest),
      stop_met_at_deg_per_s: machine.struckAt === null ? null : toDegrees(machine.struckAt),
      highest_pressure_bar: toBar(machine.highestPressure),
      deepest_suction_bar: toBar(machine.deepestSuction),
      driving_torque_at_start_N_m: machine.driving,
      bearing_holds_N_m: machine.held,
      warnings: machine.warnings,
    },
  };
}

/** The same in lines of text, each warning with what to do; empty when no machine turned the die. */
export function machineText({ machine }: PourRecord): string {
  if (!machine) return '';
  const warnings = machine.warnings.map(
    ({ kind, message, remedy }) => `  Machine ${kind}: ${message} ${remedy}\n`,
  );
  return `  ${machineSentence(machine)}\n${warnings.join('')}`;
}
